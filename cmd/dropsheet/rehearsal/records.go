package rehearsal

import (
	"context"
	"encoding/json"
	"net/http"
	"time"
)

// records is the stream of an answer: each a line of JSON that names its kind; one with bytes is followed by so many.
type records struct {
	ctx     context.Context
	to      http.ResponseWriter
	control *http.ResponseController
	err     error // the first that writing gave; nothing is written after it
}

// recordTime is how long a page may take to fetch a record: long enough for a browser on a busy machine. Whoever asks
// next does not wait for it.
const recordTime = time.Minute

// leaveTime is how long a write that is under way may take yet when the stream must end: a page that does not read must
// not keep the turn.
const leaveTime = 3 * time.Second

// newRecords begins a stream, which ends when ctx does. Close it after the last record.
func newRecords(ctx context.Context, w http.ResponseWriter) (r *records, end func()) {
	w.Header().Set("Content-Type", "application/octet-stream")
	r = &records{ctx: ctx, to: w, control: http.NewResponseController(w)}
	stop := context.AfterFunc(ctx, func() { _ = r.control.SetWriteDeadline(time.Now().Add(leaveTime)) })
	return r, func() {
		stop()
		_ = r.control.SetWriteDeadline(time.Now().Add(recordTime)) // for what else comes by this connection
	}
}

// head is what every record begins with.
type head struct {
	Kind  string `json:"kind"`
	Bytes int    `json:"bytes,omitempty"` // that follow the line
}

// write writes a record, which begins with its head, and what follows it.
func (r *records) write(record any, follows []byte) {
	if r.err != nil {
		return
	}
	if r.err = r.ctx.Err(); r.err != nil {
		return
	}
	line, err := json.Marshal(record)
	if r.err = err; err != nil {
		return
	}
	if r.err = r.control.SetWriteDeadline(time.Now().Add(recordTime)); r.err != nil {
		return
	}
	if r.ctx.Err() != nil { // which may have set its own deadline before that
		_ = r.control.SetWriteDeadline(time.Now().Add(leaveTime))
	}
	for _, part := range [][]byte{line, []byte("\n"), follows} {
		if _, r.err = r.to.Write(part); r.err != nil {
			return
		}
	}
	r.err = r.control.Flush()
}
