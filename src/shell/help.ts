/** What `--help` prints. */
export const HELP = `Usage: marker-depth [options] FILE...

Checks guitar necks: how deep to drill fret-marker holes before radiusing.
Prints a drill card for each design, then a summary.

FILE is a design in JSON, a folder (every .json file in it, by name), or - for
designs on standard input, one a line (NDJSON). Lengths are numbers of mm or
texts such as "1/4 in".

  --json      one JSON object a line for each design: "file", on standard input
              "line", and the report (mm; cures are on the cards), or "issues"
              where it cannot be read
  --csv       one row for each hole, with a header (RFC 4180, full precision)
  --inches    cards and CSV in inches
  --svg DIR   also writes pictures to DIR: the board, the windows, and a section
              at each hole; files of the same names are replaced
  --help      prints this
  --version   prints the version

CSV columns: file, line, design, ok, fret, side, max_by (what sets the most),
then lengths, their names ended by _mm or _in: from_nut, off_centre, size
(diameter, or a pocket's width), removed_inner, removed_centre, removed_outer
(by the radius, at the rim next to the centre line, the centre, the outer rim),
least, most (depths of the rim that suit), lead (of the bit's point), depth,
travel (the stop setting), planned, planned_left, planned_web (what the planned
depth leaves, worst case). A cell is empty where there is none.

Exit code: 0 every design passes; 1 some design fails; 2 something could not be
read (the other designs are checked), or the command line is wrong; 141 the
reader of the output went away.
No colour where the output is no terminal, or where NO_COLOR is set.
`;

/** What follows a mistake in the command line. */
export const HINT = "Try: marker-depth --help\n";
