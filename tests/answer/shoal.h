/* shoal.h - the small made-up farm, with a tank of fish, for the tests of the answers.
 *
 * Growth: the example of the fish farmers' calculations page (SGR, TGC): 50 g grow to
 * 120 g in 45 days at 27 °C, which is a coefficient of 0.1027 x 100.
 */
#pragma once

#include "farm.h"
#include "store/stead-batch-repo.h"
#include "store/stead-fish-repo.h"
#include "store/stead-water-repo.h"

typedef struct
{
  Farm   farm;
  gint64 tank;      /* 1,500 L */
  gint64 pellets;
  gint64 fish;      /* 100 tilapia of 50 g, put in 45 days ago; no two alike in weight */
} Shoal;

void shoal_set_up    (Shoal *shoal, gconstpointer data);
void shoal_tear_down (Shoal *shoal, gconstpointer data);

/* Another tank, another group of tilapia; each returns its id. */
gint64 shoal_tank  (Shoal *shoal, const char *name, double volume_l);
gint64 shoal_group (Shoal *shoal, const char *name, gint64 tank, gint64 fish, double weight_g, int days);

/* An entry of its fish, or of the group that it names. */
void shoal_enter  (Shoal *shoal, SteadFishEntry entry);
/* Water of one warmth each @step days up to today, the first of @days among them. */
void shoal_warm   (Shoal *shoal, gint64 fish, double water_c, int days, int step);
void shoal_weigh  (Shoal *shoal, gint64 fish, SteadDay day, int n, double mean_g);
void shoal_change (Shoal *shoal, void (*set) (SteadFish *group));
