/* stead-dig.h - before a hole is dug: the call, and the zone for hands only.
 *
 * Have buried lines marked before any digging; the call is free.  How many business days
 * ahead, and how wide the zone is, differs by place: take the local center's answer.
 * Source of the usual figures: a natural gas association's safety post (2 business days;
 * no machine within 18 to 24 in of a mark).
 */
#pragma once

#include "core/stead-calendar.h"
#include "core/stead-us-units.h"

G_BEGIN_DECLS

#define STEAD_DIG_NOTICE_DAYS 2
#define STEAD_DIG_ZONE_LEAST_M (18 * STEAD_INCH_M)
#define STEAD_DIG_ZONE_MOST_M (24 * STEAD_INCH_M)

/**
 * stead_dig_latest_call:
 * @dig: the day of digging
 * @business_days: whole business days between call and digging, 0 to 60
 * @holidays: (array length=n_holidays): days that are no business days, besides
 *   Saturdays and Sundays
 * @n_holidays: how many
 *
 * Neither the day of the call nor that of digging counts (our reading, the stricter).
 *
 * Returns: the latest business day for the call; %STEAD_DAY_NONE for a day that cannot be
 */
SteadDay stead_dig_latest_call (SteadDay        dig,
                                int             business_days,
                                const SteadDay *holidays,
                                gsize           n_holidays);

/**
 * stead_dig_by_hand:
 * @distance_m: from the mark, 0 or more
 * @zone_m: of no machine, each side of a mark
 *
 * Returns: whether only hands may dig there; %TRUE for a number that cannot be, too
 */
gboolean stead_dig_by_hand (double distance_m,
                            double zone_m);

/**
 * stead_permit_by_size:
 * @size: area of a shed or height of a fence
 * @limit: up to which the place asks for no permit, in the same unit
 *
 * Exempt from the permit is not exempt from code or zoning, and a school's site has
 * rules of its own: the building office and the school's facilities office are asked
 * in any case.
 *
 * Returns: whether it needs a permit by its size alone; %TRUE for a number that cannot be
 */
gboolean stead_permit_by_size (double size,
                               double limit);

G_END_DECLS
