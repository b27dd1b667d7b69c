/** What `--help` prints. */
export const HELP = `Usage: marker-depth [options] FILE...

Checks guitar necks: how deep to drill fret-marker holes before radiusing.
Prints a drill card for each design, then a summary.

FILE is a design in JSON, a folder (every .json file in it, by name), or - for
designs on standard input, one a line (NDJSON). Lengths are numbers of mm or
texts such as "1/4 in".

  --recursive    a folder with all folders below it, but for node_modules and
                 those whose names begin with a dot; links to folders are not
                 followed
  --jobs N       N designs at a time, in threads, 1 to 256; what is printed is
                 the same, in the same order
  --json         one JSON object a line for each design: "file", on standard
                 input "line", and the report (mm), or "issues" where it cannot
                 be read
  --remedies     with --json: each finding with its "remedies", the single
                 changes that cure it; to seek them takes many times longer
  --no-remedies  cards without remedies
  --chance       cards with how likely all goes well, at the travel set and at
                 the likeliest one
  --csv          one row for each hole, with a header (RFC 4180, full precision)
  --findings     with --csv: one row for each finding in place of each hole
  --inches       cards, notes, CSV and pictures in inches
  --repair HOLE  in place of cards a note for a hole off its mark: what to drill
                 it again with. HOLE is FRET=ERROR, FRET:SIDE=ERROR as
                 12:bass=0.4, or the hole's path in place of the fret
  --rack SIZES   the bits at hand for --repair, as 6,6.5 or "1/4 in,5/16 in";
                 else half millimetres, with --inches sixteenths of an inch
  --sanding FILE in place of cards a note on how far the sanding has come. FILE
                 is a JSON array of { "along", "centre", "bass", "treble" }: the
                 board's thickness as it is now, at places along it; "along" may
                 be "nut", "end" or "fret7", the edges may be left out
  --svg DIR      also writes pictures to DIR: the board, the windows, and a
                 section at each hole; files of the same names are replaced
  --template DIR also writes each board at 1 : 1 to DIR, as pages to print at
                 100 % and lay on the work
  --paper SIZE   the pages' paper: a4, which it is where left out, or letter
  --help         prints this
  --version      prints the version

Columns of --csv: file, line, design, ok, hole (its path), fret, side, max_by
(what sets the greatest depth), setting (its letter on the card), then lengths,
their names ended by _mm or _in: along, offset, diameter (of a dot), width,
radius, sanding, thickness, removal_inner, removal_centre, removal_outer (by the
radius, at the rim next to the centre line, the centre, the outer rim), min, max
(depths of the floor that suit), lead, rise, travel, depth, marker_left,
wood_left (the setting, and what it leaves in the worst case), and the last four
again for what is planned: planned_travel and so on. A cell is empty where there
is none.

Columns of --csv --findings: file, line, design, ok, severity, code, hole (its
path), other_hole, fret, side, station, field (the design's, at fault), value,
limit, unit (of both; none for counts), message.

Exit code: 0 every design passes; 1 some design fails, or no bit does, or a
marker is below its keep; 2 something could not be read (the other designs are
checked), or the command line is wrong; 141 the reader of the output went away.
No colour where the output is no terminal, or where NO_COLOR is set.
`;

/** What follows a mistake in the command line. */
export const HINT = "Try: marker-depth --help\n";
