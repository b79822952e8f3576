// Two lamps, mirrored in a ball of water and thrown back inside, before a black board: discs that point at its middle.
#version 3.7;
#declare Diameter = 5;
#declare Index = 1.333;
#declare Camera = 300;
#declare Distance = 200;
#declare Board_width = 540;
#declare Board_height = 360;
#declare Frame = 5.5;
#declare Black = 1;
#declare Picture = "board.png";
#include "drop.inc"

#declare Panel_right = -400;
#declare Panel_down = -300;
#declare Panel_before = 500;
#declare Panel_size = 300;
#declare Torch_right = 350;
#declare Torch_down = 100;
#declare Torch_before = 150;
#declare Torch_size = 120;

// how bright they are, in times of the board's white: the test works it out by hand
#declare Panel_bright = 2.2329;
#declare Torch_bright = 13.9557;

// a lamp that stands so far right of, below and before the board's middle
#macro Lamp(Right, Down, Before, Size, Bright)
	#local Middle = <Right, -Down, Distance - Before>;
	disc {
		Middle, <0, 0, Distance> - Middle, Size / 2
		pigment { rgb Bright }
		finish { ambient 0 diffuse 0 emission 1 }
	}
#end
Lamp(Panel_right, Panel_down, Panel_before, Panel_size, Panel_bright)
Lamp(Torch_right, Torch_down, Torch_before, Torch_size, Torch_bright)
