"""The shelf in the browser: a local page that follows the shelf file, and edits that go back into it.

    browser ◄─ events ─ server ◄─ told ─ worker ─► workshop
            ── asks ──►        ── jobs ─►

`running` starts it, `server` answers the browser behind its `guard`, `foreman` keeps the one spawned process that owns
the kept shelf, `worker` works there. The page itself is in `site/`: plain modules that run as they are.
"""
