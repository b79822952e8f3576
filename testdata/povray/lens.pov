// Through a lens of 150 mm at f/5.6, in focus between the edge of the drop and the picture in it.
#version 3.7;
#declare Diameter = 5;
#declare Index = 1.333;
#declare Camera = 300;
#declare Distance = 200;
#declare Board_width = 540;
#declare Board_height = 360;
#declare Frame = 5.5;
#declare Pupil = 26.8;
#declare Focus = 297.5;
#declare Samples = 900;
#declare Picture = "board.png";
#include "drop.inc"
