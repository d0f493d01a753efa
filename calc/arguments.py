"""What the command line can be asked, with examples."""

from __future__ import annotations

import argparse

from calc.demo import jobs
from calc.job import DRAWS, MAX_DRAWS, MIN_DRAWS
from calc.practice import USES

EXAMPLES = f"""examples:
  python -m calc --starter enduro "104 kg" --short > job.json   a new job: your two answers and the eleven readings to take first
  python -m calc --starter enduro "104 kg" > job.json           the same with every field and a note on each
  python -m calc job.json                                       size it: what to fit, how sure, what to measure and to check
  python -m calc job.json --full                                and why, other springs, other conditions, cautions
  python -m calc job.json --check                               sags, ride and push beside what was expected, and what they correct
  python -m calc job.json --states                              the fork, its cartridge charged, leaking, opened, what replaces it
  python -m calc job.json --offer                               the options side by side: what each does, costs and leaves open
  python -m calc --json < job.json                              all of it as JSON, from standard input
  python -m calc --demo                                         the worked demo job (invented)
  python -m calc --demo --job                                   the demo's job file, to copy from
  python -m calc all.json --only 3                              the third job of a file that holds several
  python -m calc may.json --compare june.json                   what was entered and recommended differently at the next visit
  python -m calc may.json --next-visit 2026-06-20 > june.json   copy it as the bike's next visit: as built is now as found
  python -m calc job.json --assemble                            filling gap by gap, checks and their ticks, hours and what is due
  python -m calc job.json --tick caps,gap 2026-06-20 > new.json the job with these checks made on that day
  python -m calc job.json --message                             what to send to the customer, in plain words
  python -m calc --questions > mine.txt                         for a customer: the sheet of Check my bike, to fill in
  python -m calc mine.txt --my-bike                             does the rear spring suit, and how sure; --job prints it as a job
  python -m calc *.json --gather > all.json                     several jobs in one file, as the page hands them out

kinds of riding: {", ".join(USES)}
Exit status: 0 sized, checked or judged, 1 an end has no answer (the letter says why), 2 the job could not be read,
3 a fault of this program.
"""


def parser() -> argparse.ArgumentParser:
    """What `python -m calc` takes, each with the words of its help.

    Parameters: none.
    Returns: a parser of the standard library.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> parser().parse_args(["may.json", "--next-visit", "2026-06-20"]).next_visit
        '2026-06-20'
    """
    taken = argparse.ArgumentParser(
        prog="python -m calc",
        description="Choose springs, preload and oil height for a motorcycle and its rider, and say what they will do.",
        epilog=EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    taken.add_argument("files", nargs="*", metavar="file", help="a job file (JSON); standard input when left out or -")
    taken.add_argument("--check", action="store_true", help="only what was found: sags beside those expected, ride, push")
    taken.add_argument("--assemble", action="store_true", help="only what putting it together and handing it over needs")
    taken.add_argument(
        "--tick", nargs=2, metavar=("CHECKS", "DATE"), help="print the job with checks made, named as --assemble does"
    )
    taken.add_argument("--message", action="store_true", help="only the message to the customer")
    taken.add_argument("--offer", action="store_true", help="print the offer: its options, what each does on this bike, and costs")
    taken.add_argument("--my-bike", action="store_true", help="judge a customer's five lengths: a filled-in sheet, or JSON")
    taken.add_argument("--questions", action="store_true", help="print the sheet that --my-bike reads, to fill in")
    taken.add_argument("--full", action="store_true", help="print the whole report, not just the letter")
    taken.add_argument(
        "--states", action="store_true", help="print the fork in each state of its sealed cartridge, along its stroke"
    )
    taken.add_argument("--json", action="store_true", help="print the whole report as JSON (the README shows what is in it)")
    taken.add_argument(
        "--starter", nargs=2, metavar=("RIDING", "RIDER"), help='write a new job, for instance: --starter enduro "104 kg"'
    )
    taken.add_argument("--short", action="store_true", help="with --starter: only the dozen fields to fill in first")
    taken.add_argument("--demo", nargs="?", const="enduro", choices=sorted(jobs()), help="take a worked demo job instead of a file")
    taken.add_argument(
        "--draws",
        type=int,
        default=DRAWS,
        help=f"draws of each reading behind a +/-, {MIN_DRAWS} to {MAX_DRAWS}, else {DRAWS}",
    )
    taken.add_argument("--only", type=int, metavar="N", help="of a file with several jobs, take this one")
    taken.add_argument("--compare", metavar="FILE", help="say what this later job has other than the file")
    taken.add_argument("--next-visit", metavar="DATE", help="print the job as that of the bike's next visit")
    taken.add_argument("--gather", action="store_true", help="print all jobs of the files as one file, instead of sizing")
    taken.add_argument("--job", action="store_true", help="print the job itself instead of sizing it")
    return taken
