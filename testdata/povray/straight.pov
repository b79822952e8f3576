// A ball before a print that is bent so that it shows the picture straight. The board is as dropsheet prints it.
#version 3.7;
#declare Diameter = 5;
#declare Index = 1.333;
#declare Camera = 300;
#declare Distance = 200;
#declare Board_width = 540;
#declare Board_height = 540;
#declare Frame = 5.5;
#declare Picture = "straight-board.png";
#include "drop.inc"
