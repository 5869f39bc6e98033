"""The pages: addresses, forms, views, templates and the look.

``pages.py`` says what a page is; each room (``today``, ``shelf``, ...) holds
its own pages, views, forms and addresses. A view reads the request, calls one
workflow and shows one page.
"""
