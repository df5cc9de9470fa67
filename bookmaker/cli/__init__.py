"""The command line: arguments, tables, messages and exit codes."""
