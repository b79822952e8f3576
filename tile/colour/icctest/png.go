package icctest

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"hash/crc32"
	"testing"

	"github.com/stretchr/testify/require"
)

// InPNG puts an iCCP chunk behind a PNG's header (ISO/IEC 15948, 11.3.3.3).
func InPNG(t testing.TB, png, profile []byte) []byte {
	t.Helper()
	var packed bytes.Buffer
	packed.WriteString("own\x00\x00")
	z := zlib.NewWriter(&packed)
	_, err := z.Write(profile)
	require.NoError(t, err)
	require.NoError(t, z.Close())
	chunk := append([]byte("iCCP"), packed.Bytes()...)
	const header = 8 + 25 // signature and IHDR
	out := append([]byte{}, png[:header]...)
	out = binary.BigEndian.AppendUint32(out, uint32(len(chunk)-4))
	out = append(out, chunk...)
	out = binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(chunk))
	return append(out, png[header:]...)
}
