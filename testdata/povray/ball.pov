// A ball of water before a board, everything in focus.
#version 3.7;
#declare Diameter = 5;
#declare Index = 1.333;
#declare Camera = 300;
#declare Distance = 200;
#declare Board_width = 540;
#declare Board_height = 360;
#declare Frame = 5.5;
#declare Picture = "board.png";
#include "drop.inc"
