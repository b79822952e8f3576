package film

import (
	"math"
	"slices"
)

// Identifiers (RFC 8794, 11.2; RFC 9559, 5).
const (
	idEBML               = 0x1A45DFA3
	idEBMLVersion        = 0x4286
	idEBMLReadVersion    = 0x42F7
	idEBMLMaxIDLength    = 0x42F2
	idEBMLMaxSizeLength  = 0x42F3
	idDocType            = 0x4282
	idDocTypeVersion     = 0x4287
	idDocTypeReadVersion = 0x4285

	idSegment      = 0x18538067
	idSeekHead     = 0x114D9B74
	idSeek         = 0x4DBB
	idSeekID       = 0x53AB
	idSeekPosition = 0x53AC

	idInfo           = 0x1549A966
	idTimestampScale = 0x2AD7B1
	idDuration       = 0x4489
	idMuxingApp      = 0x4D80
	idWritingApp     = 0x5741

	idTracks                  = 0x1654AE6B
	idTrackEntry              = 0xAE
	idTrackNumber             = 0xD7
	idTrackUID                = 0x73C5
	idTrackType               = 0x83
	idFlagLacing              = 0x9C
	idDefaultDuration         = 0x23E383
	idCodecID                 = 0x86
	idVideo                   = 0xE0
	idPixelWidth              = 0xB0
	idPixelHeight             = 0xBA
	idColour                  = 0x55B0
	idMatrixCoefficients      = 0x55B1
	idRange                   = 0x55B9
	idTransferCharacteristics = 0x55BA
	idPrimaries               = 0x55BB

	idCluster     = 0x1F43B675
	idTimestamp   = 0xE7
	idSimpleBlock = 0xA3

	idCues               = 0x1C53BB6B
	idCuePoint           = 0xBB
	idCueTime            = 0xB3
	idCueTrackPositions  = 0xB7
	idCueTrack           = 0xF7
	idCueClusterPosition = 0xF1
)

const (
	track = 1

	nanosPerMS     = 1_000_000
	nanosPerSecond = 1_000_000_000
)

// header lays everything before the first frame. Its length does not depend on what is known only at the end: how
// long the segment's content is, where in it the cues begin, and how many frames there are.
func (w *Writer) header(lengthBytes, cuesAt int64, frames int) []byte {
	ebml := element(idEBML,
		number(idEBMLVersion, 1), number(idEBMLReadVersion, 1),
		number(idEBMLMaxIDLength, 4), number(idEBMLMaxSizeLength, 8),
		// the colour elements are of version 4; who knows version 2 plays the film without them
		text(idDocType, "webm"), number(idDocTypeVersion, 4), number(idDocTypeReadVersion, 2))
	return slices.Concat(ebml, identifier(idSegment), sizeIn8(lengthBytes), w.opening(cuesAt, frames))
}

// opening lays the segment's content up to the first frame.
func (w *Writer) opening(cuesAt int64, frames int) []byte {
	info := element(idInfo,
		number(idTimestampScale, nanosPerMS), float(idDuration, float64(frames)*1000/w.playbackFPS),
		text(idMuxingApp, "dropsheet"), text(idWritingApp, "dropsheet"))
	infoAt := int64(len(seekHead(0, 0, 0)))
	seek := seekHead(infoAt, infoAt+int64(len(info)), cuesAt)
	return slices.Concat(seek, info, w.tracks())
}

// seekHead tells where the other parts lie.
func seekHead(infoAt, tracksAt, cuesAt int64) []byte {
	seek := func(id uint32, at int64) []byte {
		return element(idSeek, element(idSeekID, identifier(id)), numberIn8(idSeekPosition, at))
	}
	return element(idSeekHead, seek(idInfo, infoAt), seek(idTracks, tracksAt), seek(idCues, cuesAt))
}

func (w *Writer) tracks() []byte {
	const video, oneFrameABlock = 1, 0
	const smpte170M, from16, sRGBCurve, bt709 = 6, 1, 13, 1 // of BT.601's matrix, range, curve, and sRGB's primaries
	colour := element(idColour,
		number(idMatrixCoefficients, smpte170M), number(idRange, from16),
		number(idTransferCharacteristics, sRGBCurve), number(idPrimaries, bt709))
	return element(idTracks, element(idTrackEntry,
		number(idTrackNumber, track), number(idTrackUID, track), number(idTrackType, video),
		number(idFlagLacing, oneFrameABlock),
		number(idDefaultDuration, uint64(math.Round(nanosPerSecond/w.playbackFPS))),
		text(idCodecID, "V_VP8"),
		element(idVideo,
			number(idPixelWidth, uint64(w.size.X)), number(idPixelHeight, uint64(w.size.Y)), colour)))
}

// cues lists the frames, so that a player goes to any of them at once.
func (w *Writer) cues() []byte {
	points := make([][]byte, len(w.clusters))
	for i, at := range w.clusters {
		points[i] = element(idCuePoint, number(idCueTime, w.timeMS(i)), element(idCueTrackPositions,
			number(idCueTrack, track), number(idCueClusterPosition, uint64(at))))
	}
	return element(idCues, points...)
}
