package colour

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// Lengths of a profile's header and of each entry of its tag table (ICC.1:2010, 7.2 and 7.3). Clauses in this file are
// those of ICC.1:2010 unless another is named, and recalled from memory.
const headerBytes, entryBytes = 128, 12

// tableAt is where the entries of the tag table begin: after the header and their number (7.3).
const tableAt = headerBytes + 4

// What a profile calls the two spaces that pictures are in here (7.2.6).
const (
	rgbSignature  = "RGB "
	greySignature = "GRAY"
)

func spaceSignature(grey bool) string {
	if grey {
		return greySignature
	}
	return rgbSignature
}

// CheckProfile says why an ICC profile can't tell the colours of a grey or an RGB picture, nil if it can: it must be
// whole, of a version and a class that a PDF takes, and for as many components. A viewer trusts the profile in a PDF,
// so what can't be trusted is not passed on.
func CheckProfile(profile []byte, grey bool) error {
	return checkProfile(profile, spaceSignature(grey))
}

// checkProfile is CheckProfile of a profile for a space by its name.
func checkProfile(profile []byte, space string) error {
	if len(profile) < tableAt {
		return fmt.Errorf("it has only %d bytes", len(profile))
	}
	if says := binary.BigEndian.Uint32(profile); int64(says) != int64(len(profile)) { // 7.2.2
		return fmt.Errorf("it says that it has %d bytes and has %d", says, len(profile))
	}
	if string(profile[36:40]) != "acsp" { // 7.2.9
		return errors.New("it has no profile signature")
	}
	// A version 5 may describe light by spectra, which readers of PDF don't know (ISO 32000-1, 8.6.5.5, table 67).
	if major := profile[8]; major != 2 && major != 4 { // 7.2.4
		return fmt.Errorf("it is of version %d, and only 2 and 4 can go into a PDF", major)
	}
	switch class := string(profile[12:16]); class { // 7.2.5; those that ISO 32000-1, 8.6.5.5 takes
	case "scnr", "mntr", "prtr", "spac":
	default:
		return fmt.Errorf("its class %q is not one that describes a picture", class)
	}
	if got := string(profile[16:20]); got != space { // 7.2.6
		return fmt.Errorf("it is for %q and the picture is %q", got, space)
	}
	if connects := string(profile[20:24]); connects != "XYZ " && connects != "Lab " { // 7.2.7
		return fmt.Errorf("it connects to %q, neither XYZ nor Lab", connects)
	}
	return checkTags(profile)
}

// checkTags says what is wrong with a profile's tag table (7.3).
func checkTags(profile []byte) error {
	tags, size := tagCount(profile), int64(len(profile))
	if tags == 0 {
		return errors.New("it has no tags")
	}
	if tags > (size-tableAt)/entryBytes {
		return fmt.Errorf("it says that it has %d tags, more than fit in it", tags)
	}
	for i := range tags {
		name, at, n := tagEntry(profile, i)
		if at > size || n > size-at {
			return fmt.Errorf("its tag %q lies outside it", name)
		}
		if at < tableAt+tags*entryBytes { // 7.1: header, table and data follow one another
			return fmt.Errorf("its tag %q lies over its header or its table of tags", name)
		}
	}
	return nil
}

func tagCount(profile []byte) int64 { return int64(binary.BigEndian.Uint32(profile[headerBytes:])) }

// tagEntry reads entry i of a profile's tag table: the tag's name, where its data begin and how long they are (7.3).
func tagEntry(profile []byte, i int64) (name string, at, n int64) {
	entry := profile[tableAt+i*entryBytes:]
	return string(entry[:4]), int64(binary.BigEndian.Uint32(entry[4:])), int64(binary.BigEndian.Uint32(entry[8:]))
}
