package ask

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/flip/units"
	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

// again is a job that is asked for anew: its own words, but for those that are given, and its artwork, but where
// another is named.
type again struct {
	of      *job.Job // nil for an artwork by itself
	artwork string   // in place of the job's
	scale   float64
	without []string
}

// register adds the flags that only mean something for a job.
func (a *again) register(flags *pflag.FlagSet) {
	add(flags, &a.scale, "scale", "factor", "", number(0, maxScale), "of a JOB: print so many times as large, such as "+
		"1.05, at the same distance unless --distance or --fill says otherwise")
	addList(flags, &a.without, "without", "flag", named, "of a JOB: leave out one of its words, such as surround; repeat "+
		"it for more")
	add(flags, &a.artwork, "artwork", "file", "", named, "of a JOB: another picture in place of its own")
}

// maxScale bounds the scale: a larger print is another job.
const maxScale = 1000

// check refuses what has no meaning for an artwork by itself.
func (a *again) check(flags *pflag.FlagSet) error {
	if a.of != nil {
		return nil
	}
	for _, flag := range []string{"scale", "without", "artwork"} {
		if flags.Changed(flag) {
			return fmt.Errorf("--%s changes a job\nhint: name the folder of one in place of an artwork", flag)
		}
	}
	return nil
}

// Of says what is asked about: an artwork, or a job, whose words then stand for those that were not given.
func (s *setup) Of(path string) error {
	if !job.Names(path) {
		s.artwork = path
		return job.WrongWords(s.again.check(s.flags))
	}
	j, err := job.Read(path)
	if err != nil {
		return err
	}
	if j.Asked == nil {
		return fmt.Errorf("job %q is of format %d, which kept no words: it can be reprinted as it was, and not asked for "+
			"again\nhint: dropsheet job %s makes up a command line from its plan, to make a new job by", path, j.Version,
			report.Typed(path))
	}
	s.again.of = &j
	return job.WrongWords(s.layUnder(j.Asked))
}

// Job is the job that is asked for again; nil for an artwork by itself.
func (s *setup) Job() *job.Job { return s.again.of }

// Changes tells which words are not those of the job that is asked for again, a flag each: what it is now, and what it
// was.
func (s *setup) Changes() (changes []string) {
	if s.again.of == nil {
		return nil
	}
	now, was := asked(s.flags), s.again.of.Asked
	flags := maps.Clone(now)
	maps.Copy(flags, was)
	for _, flag := range slices.Sorted(maps.Keys(flags)) {
		if s.flags.Lookup(flag) == nil || slices.Equal(now[flag], was[flag]) {
			continue
		}
		switch is, before := typed(s.flags, flag, now[flag]), typed(s.flags, flag, was[flag]); {
		case is == "":
			changes = append(changes, "without "+before)
		case before == "":
			changes = append(changes, is)
		default:
			changes = append(changes, is+" in place of "+strings.TrimPrefix(before, "--"+flag+" "))
		}
	}
	return changes
}

// layUnder takes the words of a job for flags that were not given. Where the words given say in another way what some
// of the job's say, those give way; words that only make knows are left out by others.
func (s *setup) layUnder(words job.Asked) error {
	gives := givesWay(s.flags, words)
	for _, flag := range s.again.without {
		if _, ok := words[flag]; !ok {
			return fmt.Errorf("--without %q: the job was not asked for with --%s\nhint: its words are %s", flag, flag,
				strings.Join(slices.Sorted(maps.Keys(words)), ", "))
		}
		gives.way(flag)
	}
	// More or fewer pixels, by themselves, part the sensor that the job had, as a proof of it does.
	if s.flags.Changed("pixels") && len(words["pixel-size"]) > 0 && !gives["pixel-size"] &&
		!s.flags.Changed("pixel-size") {
		gives.way("pixel-size")
		had := s.again.of.Camera.Sensor
		if err := s.setFromJob("sensor", units.Typed(had.WidthMM)+"x"+units.Typed(had.HeightMM)); err != nil {
			return err
		}
	}
	known := makeFlags()
	for _, flag := range slices.Sorted(maps.Keys(words)) {
		switch {
		case known.Lookup(flag) == nil && !gives[flag]:
			return fmt.Errorf("the job was asked for with --%s, which this dropsheet does not know\n"+
				"hint: use the one that made "+
				"it, or leave that out (--without %[1]s)", flag)
		case s.flags.Lookup(flag) == nil, s.flags.Changed(flag), gives[flag]:
			continue
		}
		for _, word := range words[flag] {
			if err := Set(s.flags, flag, word); err != nil {
				return fmt.Errorf("the job's own words can't be taken: %w", err)
			}
		}
		s.fromJob[flag] = true
	}
	return s.rescale()
}

// setFromJob sets a word that was not given, but comes of the job.
func (s *setup) setFromJob(flag, word string) error {
	s.fromJob[flag] = true
	return Set(s.flags, flag, word)
}

// rescale puts the print size in place of the scale, and keeps the job's distance where nothing else is asked.
func (s *setup) rescale() error {
	if !s.flags.Changed("scale") {
		return nil
	}
	if s.flags.Changed("print-size") || s.flags.Changed("max-sheets") {
		return errors.New("--scale says how large the print is, and so do --print-size and --max-sheets\n" +
			"hint: give one of them")
	}
	was := s.again.of.Plan
	width := units.Typed(was.Picture.WidthMM * s.again.scale)
	if err := s.setFromJob("print-size", width); err != nil {
		return err
	}
	if !s.flags.Changed("distance") && !s.flags.Changed("fill") {
		return s.setFromJob("distance", units.Typed(was.Drop.DistanceMM))
	}
	return nil
}
