"""Tags of skeins: what the studio says on all of them, and what each lot adds."""
