/* stead-pen-room.h - room, feeder and water for the animals of a pen.
 *
 * Allowances come from a table with its sources (data/rules/build.csv): sources
 * disagree, so the program names the one that it used.  They are floors, not targets.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Animals of one kind, and what each of them needs: m² of floor, m of feeder or perch,
 * L of water a day. */
typedef struct
{
  double head;
  double each;
} SteadPenGroup;

/**
 * stead_pen_need:
 * @groups: (array length=n): the animals
 * @n: how many groups
 *
 * Returns: sum of head x need; NAN if one is below 0
 */
double stead_pen_need (const SteadPenGroup *groups,
                       gsize                n);

/**
 * stead_pen_capacity:
 * @area_m2: of floor
 * @each_m2: allowance of one animal
 *
 * Returns: animals, rounded down; %STEAD_COUNT_NONE for another number
 */
gint64 stead_pen_capacity (double area_m2,
                           double each_m2);

G_END_DECLS
