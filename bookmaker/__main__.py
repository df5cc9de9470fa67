"""``python -m bookmaker`` does what ``bookmaker`` does: this is where both begin."""

import signal

__all__ = ["main"]


def main() -> None:
    """Run the command line. Who stops it while it is still loaded has nothing to lose, and sees no traceback."""
    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
        signal.signal(signal.SIGINT, signal.SIG_DFL)
    from .cli.commands import main as run

    run()


if __name__ == "__main__":
    main()
