/* stead-food-time.h - food and the clock: reheating, time as control, date marks, thawing.
 *
 * All limits come from a table; the words are those of its rows.  What cannot be
 * shown to be in time is not: when the history is unknown, discard.
 */
#pragma once

#include "core/stead-calendar.h"
#include "core/stead-limit.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_REHEAT_PASS,
  STEAD_REHEAT_GO_ON,     /* not there yet, and there is still time */
  STEAD_REHEAT_DISCARD,
} SteadReheatVerdict;

/**
 * stead_reheat_judge:
 * @food: "cooked_on_site" or "commercial_package"
 * @microwave: whether it is heated in one
 * @reading: the core temperature, and seconds held there
 * @elapsed_h: hours from leaving the cold
 * @out: (out): the verdict, for hot holding; food for one order has no limit
 *
 * Source: FDA Food Code 2022, §3-403.11.
 *
 * Returns: %TRUE, or %FALSE with @error set
 */
gboolean stead_reheat_judge (const SteadLimitTable   *table,
                             const char              *food,
                             gboolean                 microwave,
                             const SteadLimitReading *reading,
                             double                   elapsed_h,
                             SteadReheatVerdict      *out,
                             GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* Food that time controls instead of cold or heat. */
typedef struct
{
  const char *food;                  /* "tcs", "raw_eggs", "cut_produce_or_opened_sealed" */
  double      option_h;              /* 4 or 6 */
  gboolean    highly_susceptible;    /* who eats it */
  gboolean    marked;                /* the time stands on it */
  double      start_f;               /* when taken from control; NAN: not measured */
  double      warmest_f;             /* since; NAN: not measured */
  double      elapsed_h;             /* since; NAN: not asked */
} SteadTimeControl;

typedef enum
{
  STEAD_TIME_CONTROL_PASS,
  STEAD_TIME_CONTROL_DISCARD,
  STEAD_TIME_CONTROL_NOT_ALLOWED,
} SteadTimeVerdict;

/**
 * stead_time_control_judge:
 * @out: (out): the verdict over what is known; what is not is not held against it
 *
 * Source: FDA Food Code 2022, §3-501.19.
 *
 * Returns: %TRUE, or %FALSE with @error set: there is no such option
 */
gboolean stead_time_control_judge (const SteadLimitTable   *table,
                                   const SteadTimeControl  *food,
                                   SteadTimeVerdict        *out,
                                   GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* What is known of the days of a food; %STEAD_DAY_NONE where nothing is. */
typedef struct
{
  const SteadDay *made;        /* of each part of a mixture */
  gsize           n_made;
  SteadDay        opened;      /* a package from a regulated plant */
  SteadDay        use_by;      /* the maker's, for safety */
  SteadDay        frozen;      /* last day before it froze */
  SteadDay        thawed;
} SteadFoodDays;

/**
 * stead_date_mark:
 * @out_day: (out): the last day on which it may be served; before the day of
 *   thawing, if it had none left when it froze
 *
 * The day made or opened is day 1; a mixture keeps the earliest; frozen days do
 * not count, the day of thawing does.
 * Source: FDA Food Code 2022, §3-501.17, .18.
 *
 * Returns: %TRUE, or %FALSE with @error set: no day is known, or the days of
 *   freezing do not fit
 */
gboolean stead_date_mark (const SteadLimitTable  *table,
                          const SteadFoodDays    *days,
                          SteadDay               *out_day,
                          GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_date_mark_needed:
 * Returns: whether food held cold for @held_h hours needs a date
 */
gboolean stead_date_mark_needed (const SteadLimitTable *table,
                                 double                 held_h);

/**
 * stead_date_mark_in_order:
 * @held_h: hours held cold, days frozen not counted
 * @temp_f: how cold
 * @marked: whether its date stands on it
 *
 * Returns: whether it may be kept; if not: discard
 */
gboolean stead_date_mark_in_order (const SteadLimitTable *table,
                                   double                 held_h,
                                   double                 temp_f,
                                   gboolean               marked);

/**
 * stead_thaw_in_order:
 * @method: "refrigeration", "running_water", "microwave"
 * @food: "raw_animal", "ready_to_eat", "vacuum_packed_fish", "other"
 * @water_f: the water; NAN: not measured
 * @opened: whether the pack was opened first
 * @out: (out): whether it is as the code asks
 *
 * Source: FDA Food Code 2022, §3-501.13.
 *
 * Returns: %TRUE, or %FALSE with @error set
 */
gboolean stead_thaw_in_order (const SteadLimitTable  *table,
                              const char             *method,
                              const char             *food,
                              double                  water_f,
                              gboolean                opened,
                              gboolean               *out,
                              GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_fish_freezing_h:
 * @freeze_f: how cold it is frozen
 * @store_f: how cold it is kept once solid
 * @out_hours: (out): hours at @store_f that kill parasites
 *
 * Source: FDA Food Code 2022, §3-402.11(A).
 *
 * Returns: %TRUE, or %FALSE with @error set: too warm, as a chest freezer is
 */
gboolean stead_fish_freezing_h (const SteadLimitTable  *table,
                                double                  freeze_f,
                                double                  store_f,
                                double                 *out_hours,
                                GError                **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_egg_last_day:
 * @mark: "sell_by" or "best_by"
 * @packed: the day of packing
 * @out_day: (out): the last day that the mark may name
 *
 * Source: rule of cartons with the USDA shield.
 *
 * Returns: %TRUE, or %FALSE with @error set
 */
gboolean stead_egg_last_day (const SteadLimitTable  *table,
                             const char             *mark,
                             SteadDay                packed,
                             SteadDay               *out_day,
                             GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
