#!/usr/bin/env python3
"""What an analyst would write with Polars: the bare arithmetic, no uncertainty, no reasons. peer_polars.py IN OUT

One voltage a colour, one current a class, a fixed driver, a division; the figures are round ones, for timing only.
"""
import sys

import polars as pl

VOLTS = {"far_red": 2.0, "deep_red": 2.3, "red": 2.4, "royal_blue": 3.1, "uv_a": 3.3, "white": 3.2}
AMPS = {"1W": 0.35, "3W": 0.7, "5W": 1.0, "10W": 2.0}

volts = pl.sum_horizontal(pl.col(colour) * volts for colour, volts in VOLTS.items())
amps = pl.col("class").replace_strict(AMPS, default=None, return_dtype=pl.Float64)
share = pl.col("wall_w") / pl.col("claim_w")
verdict = (
    pl.when(pl.col("share") < 0.8)
    .then(pl.lit("overstated"))
    .when(pl.col("share") < 1.0)
    .then(pl.lit("unsettled"))
    .otherwise(pl.lit("within-reach"))
)
(
    pl.scan_csv(sys.argv[1])
    .with_columns((volts * amps).alias("led_w"))
    .with_columns((pl.col("led_w") / 0.9).alias("wall_w"))
    .with_columns(share.alias("share"))
    .with_columns(verdict.alias("verdict"))
    .select("listing", "supplier", "claim_w", "verdict", "share", "led_w", "wall_w")
    .sink_csv(sys.argv[2])
)
