package main

import (
	"context"
	"fmt"
	"net"
	"path/filepath"
	"runtime/debug"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/cmd/dropsheet/rehearsal"
	"dropsheet/tile/job"
	"dropsheet/tile/job/place"
)

var rehearseCommand = command{
	name: "rehearse", args: "ARTWORK|JOB",
	summary: "the bench in the browser, to try things live",
	about: `Opens a page in the browser with the frame as the camera will record it, the
bench and the board. Move the drop, the camera, the board, lamps and seams, and
frame and figures follow; keep takes and compare them; make the job. A JOB (a
job.json or its folder) begins as it was asked for, but for the flags given
here. The page is served to this machine alone, by an address that nobody else
knows, until Ctrl-C ends it.`,
	example: "dropsheet rehearse examples/harbour/harbour.jpg --frame-width 9mm",
	prepare: func(flags *pflag.FlagSet) action {
		var asked ask.Rehearse
		asked.Register(flags)
		port := flags.Uint16("port", 0, "`number` of the port to serve at (default: one that is free)")
		noOpen := flags.Bool("no-open", false, "print the page's address alone, and open no browser")
		return func(ctx context.Context, c console, args []string) error {
			return rehearse(ctx, c, &asked, *port, *noOpen, args)
		}
	},
}

// rehearsalGCPercent lets drafts come and go with fewer collections than one make needs.
const rehearsalGCPercent = 50

// rehearse serves the page until ctx ends.
func rehearse(ctx context.Context, c console, asked *ask.Rehearse, port uint16, noOpen bool, args []string) error {
	what, err := only("rehearse", anArtwork, args)
	if err != nil {
		return err
	}
	if err := asked.Of(what); err != nil {
		return err
	}
	subject, err := subjectOf(what, asked)
	if err != nil {
		return err
	}
	// A set-up that can't be is told here, as make tells it, and not on the page.
	if err := rehearsal.Check(subject); err != nil {
		return err
	}
	l, err := net.Listen("tcp4", net.JoinHostPort("127.0.0.1", strconv.Itoa(int(port))))
	if err != nil {
		return fmt.Errorf("port %d can't be served: %w\n"+
			"hint: leave --port out for one that is free", port, place.Plainly(err))
	}
	defer debug.SetGCPercent(debug.SetGCPercent(rehearsalGCPercent))
	var about []rehearsal.Heading
	for _, h := range headings {
		about = append(about, rehearsal.Heading{Title: h.title, Flags: strings.Fields(h.flags)})
	}
	return rehearsal.Serve(ctx, l, subject, about, func(url string) {
		fmt.Fprintf(c.out, "rehearse: %s\n", url)
		if noOpen {
			return
		}
		if err := openInBrowser(url); err != nil {
			c.warn(fmt.Sprintf("no browser could be opened (%v): open that address yourself", err))
		}
	})
}

// subjectOf is what is rehearsed: an artwork, or a job, whose artwork is its copy where the file has moved or changed.
func subjectOf(what string, asked *ask.Rehearse) (rehearsal.Subject, error) {
	s := rehearsal.Subject{Artwork: what, From: asked.Job(), Limits: asked.Limits(), Words: asked.Asked(),
		Folder: filepath.Join(filepath.Dir(what), ask.BackdropFolder(what))}
	var err error
	if s.From != nil {
		s.Folder = s.From.Folder()
		if s.Artwork = asked.OtherArtwork(); s.Artwork == "" {
			s.Extent = job.Extent{WidthPx: s.From.Artwork.WidthPx, HeightPx: s.From.Artwork.HeightPx, Page: s.From.Artwork.Page}
			s.Artwork, err = s.From.FindArtwork()
			return s, err
		}
		s.From = nil
	}
	s.Extent, err = job.ReadExtent(s.Artwork, asked.Page(), s.Limits)
	return s, err
}
