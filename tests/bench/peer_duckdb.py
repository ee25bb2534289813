#!/usr/bin/env python3
"""What an analyst would write with DuckDB: the bare arithmetic, no uncertainty, no reasons. peer_duckdb.py IN OUT

One voltage a colour, one current a class, a fixed driver, a division; the figures are round ones, for timing only.
"""
import sys

import duckdb

duckdb.execute(
    f"""
    COPY (
        WITH led AS (
            SELECT listing, supplier, claim_w,
                   (2.0 * far_red + 2.3 * deep_red + 2.4 * red + 3.1 * royal_blue + 3.3 * uv_a + 3.2 * white)
                   * CASE class WHEN '1W' THEN 0.35 WHEN '3W' THEN 0.7 WHEN '5W' THEN 1.0 WHEN '10W' THEN 2.0 END AS led_w
            FROM read_csv('{sys.argv[1]}', header = true)
        ), wall AS (
            SELECT *, led_w / 0.9 AS wall_w FROM led
        )
        SELECT listing, supplier, claim_w,
               CASE WHEN wall_w < 0.8 * claim_w THEN 'overstated' WHEN wall_w < claim_w THEN 'unsettled'
                    ELSE 'within-reach' END AS verdict,
               wall_w / claim_w AS share, led_w, wall_w
        FROM wall
    ) TO '{sys.argv[2]}' (HEADER)
    """
)
