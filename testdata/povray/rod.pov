// An upright rod.
#version 3.7;
#declare Diameter = 5;
#declare Index = 1.333;
#declare Camera = 300;
#declare Distance = 200;
#declare Board_width = 540;
#declare Board_height = 360;
#declare Frame = 5.5;
#declare Rod = 1;
#declare Picture = "board.png";
#include "drop.inc"
