// A drop of water that hangs from a needle. Its profile is integrated here: Young and Laplace along the arc.
#version 3.7;
#declare Diameter = 3.5;
#declare Held = 2;
#declare Index = 1.333;
#declare Camera = 300;
#declare Distance = 200;
#declare Board_width = 420;
#declare Board_height = 280;
#declare Frame = 6;
// surface tension 0.07274 N/m, density 998.207 - 1.204 kg/m³, gravity 9.80665 m/s²
#declare Capillary = sqrt(0.07274 / ((998.207 - 1.204) * 9.80665)) * 1000;
#declare Picture = "board.png";

// steps along the arc, by Runge and Kutta; the tip's radius is found by halving so that the drop is as wide as asked
#declare Step = 0.002;
#macro Slope(X, Z, Phi, Tip)
	<cos(Phi), sin(Phi), 2 / Tip - Z / (Capillary * Capillary) - (X > 0 ? sin(Phi) / max(X, 1e-30) : 1 / Tip)>
#end
#macro Go(P, Tip)
	#local A = Slope(P.x, P.y, P.z, Tip);
	#local Q = P + A * Step / 2;
	#local B = Slope(Q.x, Q.y, Q.z, Tip);
	#local Q = P + B * Step / 2;
	#local C = Slope(Q.x, Q.y, Q.z, Tip);
	#local Q = P + C * Step;
	#local D = Slope(Q.x, Q.y, Q.z, Tip);
	(P + (A + 2 * B + 2 * C + D) * Step / 6)
#end
#declare Low = Diameter / 4;
#declare High = Diameter / 2;
#declare Halving = 0;
#while (Halving < 40)
	#declare Tip = (Low + High) / 2;
	#declare P = <0, 0, 0>;
	#while (P.z < pi / 2 & P.y < 8)
		#declare Before = P;
		#declare P = Go(P, Tip);
	#end
	// the widest place lies on the last step: by a parabola, x = x0 + s cos phi - s²/2 phi' sin phi
	#declare K = Slope(Before.x, Before.y, Before.z, Tip);
	#declare Rest = (pi / 2 - Before.z) / K.z;
	#declare Widest = Before.x + Rest * K.x - Rest * Rest / 2 * K.y * K.z;
	#declare Equator = Before.y + Rest * K.y + Rest * Rest / 2 * K.x * K.z;
	#if (P.y >= 8 | Widest > Diameter / 2) #declare High = Tip; #else #declare Low = Tip; #end
	#declare Halving = Halving + 1;
#end

// pieces of many steps each, with their true slopes at both ends; the last ends where the drop is held
#declare Piece = 100;
#declare Points = array[10000];
#declare N = 0;
#declare P = <0, 0, 0>;
#declare Held_yet = 0;
#while (!Held_yet)
	#declare From = P;
	#declare I = 0;
	#while (I < Piece & !Held_yet)
		#declare Before = P;
		#declare P = Go(P, Tip);
		#declare I = I + 1;
		#if (P.z > pi / 2 & P.x < Held / 2) #declare Held_yet = 1; #end
	#end
	#declare Arc = I * Step;
	#if (Held_yet)
		#declare Part = (Before.x - Held / 2) / (Before.x - P.x);
		#declare P = Before + Part * (P - Before);
		#declare Arc = (I - 1 + Part) * Step;
	#end
	#declare Points[N] = <From.x, From.y>;
	#declare Points[N + 1] = <From.x, From.y> + <cos(From.z), sin(From.z)> * Arc / 3;
	#declare Points[N + 2] = <P.x, P.y> - <cos(P.z), sin(P.z)> * Arc / 3;
	#declare Points[N + 3] = <P.x, P.y>;
	#declare N = N + 4;
#end
#declare Top = P.y - Equator;
#include "drop.inc"
