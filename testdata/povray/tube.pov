// An upright tube of glass, filled with water.
#version 3.7;
#declare Diameter = 20;
#declare Wall = 2;
#declare Wall_index = 1.5168;
#declare Index = 1.333;
#declare Camera = 300;
#declare Distance = 200;
#declare Board_width = 540;
#declare Board_height = 360;
#declare Frame = 22;
#declare Rod = 1;
#declare Picture = "board.png";
#include "drop.inc"
