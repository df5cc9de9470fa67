"""Everything that is written: all or nothing, and never at the cost of what is the maker's.

A folder is written anew beside the one it replaces and takes its place when it is complete; a single file likewise.
Only what bookmaker wrote, and nobody changed since, is replaced: a cover drawn over a template is the maker's.
"""

from .exchange import exchange_file
from .file_names import file_names
from .folder import NewFolder, replaced_folder
from .ours import PLAN_NAME, digest_of, report_of
from .seals import UNSEALED, seal, sealed
from .single_file import check_replaceable, new_files, put_file

__all__ = [
    "PLAN_NAME",
    "UNSEALED",
    "NewFolder",
    "check_replaceable",
    "digest_of",
    "exchange_file",
    "file_names",
    "new_files",
    "put_file",
    "replaced_folder",
    "report_of",
    "seal",
    "sealed",
]
