"""Notices: what the compiler tells about a package, made in one place and rendered in another."""

from tenderwright.notices.notice import Note, Notice, Place, sort_notices

__all__ = ["Note", "Notice", "Place", "sort_notices"]
