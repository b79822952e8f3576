#include "go_asm.h"
#include "textflag.h"

// The look-ups in AVX2, as the loops of loops_amd64.s.

// NEXTPIECE begins a piece of the path: R8 and R9 are its first place, stepX and stepY its step, AX how many places it has, CX their binary places and R10 those less PhaseBits.
// A place is its knot shifted by shift, and steps by what lies between the knots.
#define NEXTPIECE \
	MOVQ shift+48(FP), CX; \
	MOVQ skip+64(FP), R13; \
	MOVQ x+32(FP), R10; \
	MOVQ (R10), R8; \
	MOVQ 8(R10), R11; \
	SUBQ R8, R11; \
	MOVQ R11, stepX-8(SP); \
	IMULQ R13, R11; \
	SHLXQ CX, R8, R8; \
	ADDQ R11, R8; \
	ADDQ $8, R10; \
	MOVQ R10, x+32(FP); \
	MOVQ y+40(FP), R10; \
	MOVQ (R10), R9; \
	MOVQ 8(R10), R11; \
	SUBQ R9, R11; \
	MOVQ R11, stepY-16(SP); \
	IMULQ R13, R11; \
	SHLXQ CX, R9, R9; \
	ADDQ R11, R9; \
	ADDQ $8, R10; \
	MOVQ R10, y+40(FP); \
	MOVQ $1, AX; \
	SHLXQ CX, AX, AX; \
	SUBQ R13, AX; \
	CMPQ AX, R15; \
	CMOVQGT R15, AX; \
	SUBQ AX, R15; \
	MOVQ $0, skip+64(FP); \
	ADDQ places+56(FP), CX; \
	LEAQ -const_PhaseBits(CX), R10

// NEXTPLACE makes R11 the offset of the row of a place's first pixel, R13 that of its column in pixels, Y1, Y3 and Y5 its weights down, R12 the offset of those across, and steps on.
#define NEXTPLACE \
	SARXQ R10, R8, R12; \
	SARXQ R10, R9, R13; \
	SARXQ CX, R9, R11; \
	IMULQ DX, R11; \
	ANDQ $((1<<const_PhaseBits)-1), R12; \
	ANDQ $((1<<const_PhaseBits)-1), R13; \
	SHLQ $4, R12; \
	SHLQ $4, R13; \
	ADDQ BX, R13; \
	ADDQ SI, R11; \
	ADDQ stepY-16(SP), R9; \
	VPBROADCASTD (R13), Y1; \
	VPBROADCASTD 4(R13), Y3; \
	VPBROADCASTD 8(R13), Y5; \
	SARXQ CX, R8, R13; \
	ADDQ stepX-8(SP), R8

// TWOROWS adds six pixels of the row at R11 and of the next to the sums of lookUpPixelsAVX2, weighed down, and goes two rows on.
#define TWOROWS(weights) \
	VMOVDQU (R11), X0; \
	VMOVDQU (R11)(DX*1), X2; \
	VMOVQ 16(R11), X4; \
	VMOVQ 16(R11)(DX*1), X6; \
	LEAQ (R11)(DX*2), R11; \
	VPUNPCKHBW X2, X0, X12; \
	VPUNPCKLBW X2, X0, X0; \
	VPUNPCKLBW X6, X4, X4; \
	VPMOVZXBW X0, Y0; \
	VPMOVZXBW X12, Y12; \
	VPMOVZXBW X4, Y4; \
	VPMADDWD weights, Y0, Y0; \
	VPMADDWD weights, Y12, Y12; \
	VPMADDWD weights, Y4, Y4; \
	VPADDD Y0, Y9, Y9; \
	VPADDD Y12, Y10, Y10; \
	VPADDD Y4, Y11, Y11

// func lookUpAVX2(dst *byte, n int, src *byte, stride int, x, y *int, shift, places uint, skip int, kernel *Kernel)
TEXT ·lookUpAVX2(SB), NOSPLIT, $16-80
	MOVQ dst+0(FP), DI
	MOVQ n+8(FP), R15 // places that are left
	MOVQ src+16(FP), SI
	MOVQ stride+24(FP), DX
	MOVQ kernel+72(FP), BX
	MOVL $const_middleRound, AX
	VMOVD AX, X7
	VPBROADCASTD X7, Y7
	MOVL $const_levelRound, AX
	VMOVD AX, X8
	LEAQ (DX)(DX*2), R14 // three rows

piece:
	NEXTPIECE

look:
	NEXTPLACE
	ADDQ R13, R11 // the first pixel

	VMOVQ (R11), X0
	VMOVQ (R11)(DX*1), X6
	VPUNPCKLBW X6, X0, X0 // a byte of the upper row, one of the lower, and so on
	VMOVQ (R11)(DX*2), X2
	ADDQ R14, R11
	VMOVQ (R11), X6
	VPUNPCKLBW X6, X2, X2
	VMOVQ (R11)(DX*1), X4
	VMOVQ (R11)(DX*2), X6
	VPUNPCKLBW X6, X4, X4
	VPMOVZXBW X0, Y0
	VPMOVZXBW X2, Y2
	VPMOVZXBW X4, Y4
	VPMADDWD Y1, Y0, Y0
	VPMADDWD Y3, Y2, Y2
	VPMADDWD Y5, Y4, Y4
	VPADDD Y7, Y0, Y0
	VPADDD Y4, Y2, Y2
	VPADDD Y2, Y0, Y0
	VPSRAD $const_middleShift, Y0, Y0 // eight columns, of which six count
	VEXTRACTI128 $1, Y0, X1
	VPACKSSDW X1, X0, X0
	VPMADDWD (BX)(R12*1), X0, X0
	VPSHUFD $0x0e, X0, X1 // adds up the four sums
	VPADDD X1, X0, X0
	VPSHUFD $0x01, X0, X1
	VPADDD X1, X0, X0
	VPADDD X8, X0, X0
	VPSRAD $const_levelShift, X0, X0
	VPACKSSDW X0, X0, X0
	VPACKUSWB X0, X0, X0 // into 0 to 255
	VPEXTRB $0, X0, (DI)
	INCQ DI
	DECQ AX
	JNZ look

	TESTQ R15, R15
	JNZ piece

	VZEROUPPER
	RET

// func lookUpPixelsAVX2(dst *byte, n int, src *byte, stride int, x, y *int, shift, places uint, skip int, kernel *Kernel)
TEXT ·lookUpPixelsAVX2(SB), NOSPLIT, $16-80
	MOVQ dst+0(FP), DI
	MOVQ n+8(FP), R15 // places that are left
	MOVQ src+16(FP), SI
	MOVQ stride+24(FP), DX
	MOVQ kernel+72(FP), BX
	MOVL $const_middleRound, AX
	VMOVD AX, X7
	VPBROADCASTD X7, Y7
	MOVL $const_levelRound, AX
	VMOVD AX, X8
	VPBROADCASTD X8, X8

piece:
	NEXTPIECE

look:
	NEXTPLACE
	LEAQ (R11)(R13*4), R11 // the first pixel

	// Sums of two pixels' channels each: Y9 of the first two, Y10 of the next, Y11 of the last.
	VMOVDQA Y7, Y9
	VMOVDQA Y7, Y10
	VMOVDQA Y7, Y11
	TWOROWS(Y1)
	TWOROWS(Y3)
	TWOROWS(Y5)
	VPSRAD $const_middleShift, Y9, Y9
	VPSRAD $const_middleShift, Y10, Y10
	VPSRAD $const_middleShift, Y11, Y11
	VPACKSSDW Y10, Y9, Y9 // the first and the third pixel in one half, the second and the fourth in the other
	VPACKSSDW Y11, Y11, Y11
	VEXTRACTI128 $1, Y9, X10
	VEXTRACTI128 $1, Y11, X12
	VPUNPCKHWD X10, X9, X13 // the same channel of two pixels side by side
	VPUNPCKLWD X10, X9, X9
	VPUNPCKLWD X12, X11, X11
	VPBROADCASTD (BX)(R12*1), X0 // two weights
	VPBROADCASTD 4(BX)(R12*1), X2
	VPBROADCASTD 8(BX)(R12*1), X4
	VPMADDWD X0, X9, X9
	VPMADDWD X2, X13, X13
	VPMADDWD X4, X11, X11
	VPADDD X8, X9, X9
	VPADDD X13, X11, X11
	VPADDD X11, X9, X9
	VPSRAD $const_levelShift, X9, X9
	VPACKSSDW X9, X9, X9
	VPACKUSWB X9, X9, X9 // into 0 to 255
	VMOVD X9, (DI)
	ADDQ $4, DI
	DECQ AX
	JNZ look

	TESTQ R15, R15
	JNZ piece

	VZEROUPPER
	RET
