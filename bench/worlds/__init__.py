"""Made-up studios for the benchmarks; no demo."""
