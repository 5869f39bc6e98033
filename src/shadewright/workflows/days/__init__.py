"""Dye days: what is wanted, split into baths, planned, dyed, and looked back on.

Demand (``orders``, ``demand``, ``promises``) becomes baths (``splitting``,
``stock_needs``), baths a plan (``asked``, ``scheduling``, ``schedules``), the plan
paper (``sheets``) and the bench's next step; what happened comes back as ``after``.
"""
