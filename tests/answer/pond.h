/* pond.h - a tank of fish beside the farm of farm.h, for the tests of batches.
 *
 * 200 fish for $50 came on 2026-01-01, ninety days ago, and eat 1 kg of fish feed a day
 * out of bags of 50 kg: $75 on the first day, $90 on 2026-02-01.  They are meant to give
 * 60 kg by 2026-04-30, which is 30 days from today.  A product sells them by the kilogram.
 */
#pragma once

#include "farm.h"

#include "store/stead-fish-repo.h"
#include "store/stead-harvest-repo.h"

typedef struct
{
  Farm   farm;
  gint64 fish;      /* "Catfish 1" */
  gint64 feed;      /* "Fish feed" */
  gint64 dressed;   /* "Catfish, dressed", kg */
  gint64 product;   /* "Catfish", by the kilogram, no packaging */
} Pond;

void   pond_set_up    (Pond *pond, gconstpointer data);
void   pond_tear_down (Pond *pond, gconstpointer data);

/* A tank of 2,000 L; returns its place. */
gint64 pond_tank    (Pond *pond, const char *name);
/* 1 kg of feed on each of the ninety days up to today. */
void   pond_feed    (Pond *pond);
void   pond_plan    (Pond *pond, double output_kg, SteadDay ends_on);
/* Refused or saved; returns its id. */
gint64 pond_harvest (Pond *pond, SteadDay day, double kg, gint64 pieces, gint64 cents, gboolean is_last);
