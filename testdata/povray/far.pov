// The same from further off, and the board further behind.
#version 3.7;
#declare Diameter = 5;
#declare Index = 1.333;
#declare Camera = 900;
#declare Distance = 600;
#declare Board_width = 1500;
#declare Board_height = 1000;
#declare Frame = 5.5;
#declare Picture = "board.png";
#include "drop.inc"
