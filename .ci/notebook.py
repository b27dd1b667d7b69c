#!/usr/bin/python3
"""Executes docs/notebook.ipynb with a real Jupyter client and the Deno kernel, against the built package in dist.

Fails on any cell's error, and where a cell's outputs are not those that are kept in the notebook.
With --write it keeps the outputs instead: without the kernel's own marks, times or paths.

Needs nbclient (Debian: jupyter-nbconvert, jupyter-client, jupyter-core) and Deno, from $DENO or .ci/runtimes.
"""

import json
import os
import sys
import tempfile
from pathlib import Path
from queue import Empty

import nbformat
from nbclient import NotebookClient
from nbclient.util import ensure_async

ROOT = Path(__file__).resolve().parent.parent
NOTEBOOK = ROOT / "docs" / "notebook.ipynb"
DENO = os.environ.get("DENO", str(ROOT / ".ci/runtimes/node_modules/.bin/deno"))
# how long to listen on after the kernel says that it is idle, s: Deno sends some results later than that
DRAIN = 0.2
LEAST_OUTPUTS = 6


class DrainingClient(NotebookClient):
    """A client that takes in what the kernel sends after it has reported that it is idle."""

    async def _async_poll_output_msg(self, parent_msg_id, cell, cell_index):
        await super()._async_poll_output_msg(parent_msg_id, cell, cell_index)
        while True:
            try:
                message = await ensure_async(self.kc.iopub_channel.get_msg(timeout=DRAIN))
            except Empty:
                return
            if message["parent_header"].get("msg_id") == parent_msg_id:
                self.process_message(message, cell, cell_index)


def install_kernel(home):
    """A kernel of this run's own, so that nothing is left behind on the machine."""
    folder = Path(home) / "kernels" / "deno"
    folder.mkdir(parents=True)
    spec = {
        "argv": [DENO, "jupyter", "--kernel", "--conn", "{connection_file}"],
        "display_name": "Deno",
        "language": "typescript",
    }
    (folder / "kernel.json").write_text(json.dumps(spec))
    os.environ["JUPYTER_PATH"] = str(home)
    os.environ["JUPYTER_RUNTIME_DIR"] = str(Path(home) / "runtime")
    os.environ["DENO_DIR"] = str(Path(home) / "deno")
    os.environ["DENO_NO_UPDATE_CHECK"] = "1"
    os.environ["NO_COLOR"] = "1"


def executed(notebook):
    """The notebook with the outputs of this run; raises CellExecutionError where a cell fails."""
    with tempfile.TemporaryDirectory() as home:
        install_kernel(home)
        client = DrainingClient(
            notebook,
            timeout=120,
            kernel_name="deno",
            record_timing=False,
            resources={"metadata": {"path": str(NOTEBOOK.parent)}},
        )
        return client.execute()


def outputs_of(cell):
    """A cell's outputs in forms that can be compared: each stream in one piece, and what is displayed."""
    streams = {}
    others = []
    for output in cell.outputs:
        if output.output_type == "stream":
            streams[output.name] = streams.get(output.name, "") + output.text
        else:
            others.append({"data": dict(output.data)})
    return [{"stream": name, "text": text} for name, text in sorted(streams.items())] + others


def merged(outputs):
    """Outputs with each run of one stream in one piece."""
    pieces = []
    for output in outputs:
        last = pieces[-1] if pieces else None
        if last and output.output_type == "stream" and last.get("name") == output.name:
            last.text += output.text
        else:
            pieces.append(nbformat.NotebookNode(output))
    return pieces


def keep(notebook, metadata):
    """Writes the notebook without what is this run's own."""
    notebook.metadata = metadata
    count = 0
    for cell in notebook.cells:
        cell.metadata = nbformat.NotebookNode()
        if cell.cell_type != "code":
            continue
        count += 1
        cell.execution_count = count
        cell.outputs = merged(cell.outputs)
        for output in cell.outputs:
            if "execution_count" in output:
                output.execution_count = count
            if "metadata" in output:
                output.metadata = nbformat.NotebookNode()
    nbformat.write(notebook, NOTEBOOK)


def faults(expected, actual):
    """What differs, in words."""
    found = []
    shown = 0
    for number, (before, now) in enumerate(zip(expected.cells, actual.cells, strict=True), 1):
        if before.cell_type != "code":
            continue
        wanted, made = outputs_of(before), outputs_of(now)
        shown += len(wanted)
        if wanted != made:
            found.append(f"cell {number}: its outputs are not those that are kept: {told(wanted)}, now {told(made)}")
    if shown < LEAST_OUTPUTS:
        found.append(f"only {shown} outputs are kept; {LEAST_OUTPUTS} are expected at least")
    return found


def told(outputs):
    names = [f"{o['stream']} ({len(o['text'])})" if "stream" in o else "/".join(sorted(o["data"])) for o in outputs]
    return ", ".join(names) or "none"


def main():
    if not Path(DENO).exists():
        print(f"no Deno at {DENO}: install .ci/runtimes, or name it in DENO", file=sys.stderr)
        return 1
    expected = nbformat.read(NOTEBOOK, as_version=4)
    actual = executed(nbformat.read(NOTEBOOK, as_version=4))
    if "--write" in sys.argv[1:]:
        keep(actual, expected.metadata)
        print(f"{NOTEBOOK.name}: outputs kept")
        return 0
    found = faults(expected, actual)
    for fault in found:
        print(fault, file=sys.stderr)
    count = sum(cell.cell_type == "code" for cell in actual.cells)
    print(f"{NOTEBOOK.name}: {count} cells executed, {len(found)} faults")
    return 1 if found else 0


sys.exit(main())
