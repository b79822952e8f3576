#include "go_asm.h"
#include "textflag.h"

// The loops in AVX2. VPMADDWD multiplies 16-bit numbers and adds neighbouring products to 32 bits: two rows, or two places of a row, for each sum.
// Operands stand in Go's order: the result last, and the first source before it.

// func downAVX2(dst *int16, n int, src *byte, stride int, weights *int16, pairs int)
TEXT ·downAVX2(SB), NOSPLIT, $0-48
	MOVQ dst+0(FP), DI
	MOVQ n+8(FP), CX
	MOVQ src+16(FP), SI
	MOVQ stride+24(FP), DX
	MOVQ weights+32(FP), BX
	MOVQ pairs+40(FP), R8
	MOVL $const_middleRound, AX
	VMOVD AX, X7
	VPBROADCASTD X7, Y7
	LEAQ -16(CX), R10 // where the last 16 columns begin
	XORQ R9, R9

columns:
	CMPQ R9, R10
	CMOVQGT R10, R9 // they overlap those before
	LEAQ (SI)(R9*1), R11
	MOVQ BX, R12
	MOVQ R8, R13
	VMOVDQA Y7, Y0 // sums of the first eight columns
	VMOVDQA Y7, Y1 // and of the others

pair:
	VMOVDQU (R11), X2
	VMOVDQU (R11)(DX*1), X3
	VPBROADCASTD (R12), Y6 // two weights
	VPUNPCKLBW X3, X2, X4 // a byte of the upper row, one of the lower, and so on
	VPUNPCKHBW X3, X2, X5
	VPMOVZXBW X4, Y4
	VPMOVZXBW X5, Y5
	VPMADDWD Y6, Y4, Y4
	VPMADDWD Y6, Y5, Y5
	VPADDD Y4, Y0, Y0
	VPADDD Y5, Y1, Y1
	LEAQ (R11)(DX*2), R11
	ADDQ $4, R12
	DECQ R13
	JNZ pair

	VPSRAD $const_middleShift, Y0, Y0
	VPSRAD $const_middleShift, Y1, Y1
	VPACKSSDW Y1, Y0, Y0
	VPERMQ $0xd8, Y0, Y0 // packing goes by halves of the registers
	VMOVDQU Y0, (DI)(R9*2)
	ADDQ $16, R9
	CMPQ R9, CX
	JLT columns

	VZEROUPPER
	RET

// func acrossAVX2(dst *byte, n int, src *int16, first *int32, weights *int16, eights int)
TEXT ·acrossAVX2(SB), NOSPLIT, $0-48
	MOVQ dst+0(FP), DI
	MOVQ n+8(FP), CX
	MOVQ src+16(FP), SI
	MOVQ first+24(FP), DX
	MOVQ weights+32(FP), BX
	MOVQ eights+40(FP), R8
	MOVL $const_levelRound, AX
	VMOVD AX, X7

place:
	MOVLQSX (DX), R9
	LEAQ (SI)(R9*2), R11
	MOVQ R8, R13
	VMOVDQA X7, X0

eight:
	VMOVDQU (BX), X1
	VPMADDWD (R11), X1, X1
	VPADDD X1, X0, X0
	ADDQ $16, BX
	ADDQ $16, R11
	DECQ R13
	JNZ eight

	VPSHUFD $0x0e, X0, X1 // adds up the four sums
	VPADDD X1, X0, X0
	VPSHUFD $0x01, X0, X1
	VPADDD X1, X0, X0
	VPSRAD $const_levelShift, X0, X0
	VPACKSSDW X0, X0, X0
	VPACKUSWB X0, X0, X0 // into 0 to 255
	VPEXTRB $0, X0, (DI)
	ADDQ $4, DX
	INCQ DI
	DECQ CX
	JNZ place

	VZEROUPPER
	RET

// Puts the same channel of two pixels side by side, in each half of a register.
DATA neighbours<>+0(SB)/8, $0x0b0a030209080100
DATA neighbours<>+8(SB)/8, $0x0f0e07060d0c0504
DATA neighbours<>+16(SB)/8, $0x0b0a030209080100
DATA neighbours<>+24(SB)/8, $0x0f0e07060d0c0504
GLOBL neighbours<>(SB), RODATA|NOPTR, $32

// Gives each half of a register one of two pairs of weights.
DATA halves<>+0(SB)/8, $0x0000000000000000
DATA halves<>+8(SB)/8, $0x0000000000000000
DATA halves<>+16(SB)/8, $0x0000000100000001
DATA halves<>+24(SB)/8, $0x0000000100000001
GLOBL halves<>(SB), RODATA|NOPTR, $32

// func acrossPixelsAVX2(dst *byte, n int, src *int16, first *int32, weights *int16, eights int)
TEXT ·acrossPixelsAVX2(SB), NOSPLIT, $0-48
	MOVQ dst+0(FP), DI
	MOVQ n+8(FP), CX
	MOVQ src+16(FP), SI
	MOVQ first+24(FP), DX
	MOVQ weights+32(FP), BX
	MOVQ eights+40(FP), R8
	MOVL $const_levelRound, AX
	VMOVD AX, X7
	VPBROADCASTD X7, X7
	VMOVDQU neighbours<>(SB), Y6
	VMOVDQU halves<>(SB), Y5

place:
	MOVLQSX (DX), R9
	LEAQ (SI)(R9*8), R11
	MOVQ R8, R13
	VMOVDQA X7, X0 // clears the upper half of Y0
	VPXOR Y1, Y1, Y1

eight:
	VMOVDQU (R11), Y2 // four pixels
	VMOVDQU 32(R11), Y3
	VPBROADCASTQ (BX), Y4 // four weights
	VPBROADCASTQ 8(BX), Y8
	VPSHUFB Y6, Y2, Y2
	VPSHUFB Y6, Y3, Y3
	VPERMD Y4, Y5, Y4
	VPERMD Y8, Y5, Y8
	VPMADDWD Y4, Y2, Y2
	VPMADDWD Y8, Y3, Y3
	VPADDD Y2, Y0, Y0
	VPADDD Y3, Y1, Y1
	ADDQ $16, BX
	ADDQ $64, R11
	DECQ R13
	JNZ eight

	VPADDD Y1, Y0, Y0
	VEXTRACTI128 $1, Y0, X1
	VPADDD X1, X0, X0
	VPSRAD $const_levelShift, X0, X0
	VPACKSSDW X0, X0, X0
	VPACKUSWB X0, X0, X0 // into 0 to 255
	VMOVD X0, (DI)
	ADDQ $4, DX
	ADDQ $4, DI
	DECQ CX
	JNZ place

	VZEROUPPER
	RET
