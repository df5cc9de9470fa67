"""The shelf in the browser: a local page that follows the shelf file, and edits that go back into it.

    browser ◄─ events ─ server ◄─ told ─ worker ─► workshop
            ── asks ──►        ── jobs ─►

`running` starts it. In `serving/` the server answers the browser behind its guard, and the foreman keeps the one
spawned process that owns the kept shelf; in `work/` stands what that does. The two exchange the values of `jobs`. The
page itself is in `site/`: plain modules that run as they are.
"""
