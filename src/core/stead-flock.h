/* stead-flock.h - a laying flock in numbers.
 *
 * Rates are fractions (_frac, 0 to 1) inside; a person reads percent.
 */
#pragma once

#include <glib.h>

#include "core/stead-band.h"
#include "core/stead-calendar.h"

G_BEGIN_DECLS

/* One week of one flock, summed from its log. */
typedef struct
{
  SteadDay first_day;    /* its first day; weeks count from the day of housing */
  double   age_weeks;    /* age of the birds at the middle of the week */
  gint32   days_logged;  /* days with an egg entry, 0 to 7 */
  double   hen_days;     /* hens alive, summed over the days logged */
  gint64   eggs;         /* all eggs, cracked ones too */
  gint64   cracked;      /* of them cracked */
  gint64   deaths;       /* died or culled */
  double   feed_kg;      /* feed given, 0: none entered */
  gboolean left_out;     /* marked as not to learn from: heat, moult, no water */
} SteadLayWeek;

/* Weeks running that stand apart from the others, and what is said of them. */
typedef struct
{
  gsize       first;     /* index into the weeks */
  gsize       last;      /* the same or a later one */
  gboolean    far_off;   /* found far off the curve; FALSE: left out by a person */
  const char *text;      /* short, for beside the points */
} SteadLayNote;

/* What the chart of a flock draws; the arrays belong to whoever filled it in. */
typedef struct
{
  const SteadLayWeek *weeks;        /* oldest first */
  gsize               n_weeks;
  const double       *curve_age;    /* the curve, learned or as expected: ages in weeks, rising */
  const double       *curve_frac;   /* hen-day rate at each age */
  gsize               n_curve;
  double              today_age_weeks;
  const double       *ahead_age;    /* the band of the forecast: ages in weeks, rising */
  const SteadBand    *ahead_frac;   /* hen-day rate of a week at each age */
  gsize               n_ahead;      /* 0: no forecast */
  const SteadLayNote *notes;
  gsize               n_notes;
} SteadLaySeries;

/* Totals of a span of the log. */
typedef struct
{
  gint64 eggs;
  gint64 cracked;
  gint64 deaths;
  double feed_kg;
  double hen_days;       /* over the days that have an egg entry */
  double fed_hen_days;   /* over the days that have a feed entry */
  gint64 days_logged;
} SteadFlockTotals;

/**
 * stead_flock_hen_day_frac: eggs per hen and day
 * Returns: eggs / hen-days; NAN without hen-days
 */
double stead_flock_hen_day_frac (gint64 eggs,
                                 double hen_days);

/**
 * stead_flock_hen_housed_frac: eggs per hen once housed and day
 * Returns: eggs / (hens housed x days); NAN if either is 0
 */
double stead_flock_hen_housed_frac (gint64 eggs,
                                    gint64 hens_housed,
                                    gint64 days);

/* Birds that died or came on one day of a period. */
typedef struct
{
  int    day;     /* 1 is the first day of the period */
  double birds;
} SteadFlockChange;

/**
 * stead_flock_hen_days:
 * @hens: alive on the first day
 * @days: days of the period
 * @deaths: (array length=n_deaths): who died when
 * @arrivals: (array length=n_arrivals): who came when
 *
 * The convention of monthly books: neither the day of death nor the day of
 * arrival counts.  Daily counts need no convention and are better.
 * Source: Calculating Agriculture, chapter 12, p. 12-11.
 *
 * Returns: hens alive, summed over the days
 */
double stead_flock_hen_days (double                  hens,
                             int                     days,
                             const SteadFlockChange *deaths,
                             gsize                   n_deaths,
                             const SteadFlockChange *arrivals,
                             gsize                   n_arrivals);

/**
 * stead_flock_mortality_frac: deaths as a share of the birds started; NAN without birds
 * stead_flock_survivors: birds started x (1 - mortality)
 *
 * Source: Calculating Agriculture, chapter 12, p. 12-9.
 */
double stead_flock_mortality_frac (double deaths,
                                   double started);
double stead_flock_survivors (double started,
                              double mortality_frac);

/**
 * stead_flock_feed_per_dozen_kg:
 * @feed_kg: feed of the span, kg
 * @eggs: eggs of the same span
 * Returns: kg of feed for a dozen eggs; NAN without eggs
 */
double stead_flock_feed_per_dozen_kg (double feed_kg,
                                      gint64 eggs);

/**
 * stead_flock_bird_cents_per_egg:
 * @bird_cents: cost of one pullet at point of lay
 * @salvage_cents: its worth at the end, 0 to @bird_cents
 * @eggs_expected: eggs expected of one pullet housed, above 0
 *
 * Spread by eggs laid, not by months, so that a poor month carries less.
 * Source of what is spread: UC Davis avian sciences, Hen value, September 2002,
 * which writes it down by weeks (stead-bird-value.h); by eggs is derived from it.
 *
 * Returns: cents that one egg carries, unrounded
 */
double stead_flock_bird_cents_per_egg (double bird_cents,
                                       double salvage_cents,
                                       double eggs_expected);

typedef enum
{
  STEAD_EGG_CLASS_PEEWEE,
  STEAD_EGG_CLASS_SMALL,
  STEAD_EGG_CLASS_MEDIUM,
  STEAD_EGG_CLASS_LARGE,
  STEAD_EGG_CLASS_EXTRA_LARGE,
  STEAD_EGG_CLASS_JUMBO,
} SteadEggClass;

/**
 * stead_egg_class_of_dozen:
 * @dozen_oz: net weight of a dozen, ounces avoirdupois
 * @out_class: (out): the heaviest class whose least weight is reached
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Source: Pennsylvania Code, title 7, section 87.42(a), table of weight classes.
 *
 * Returns: %TRUE, or %FALSE below the least weight of a peewee
 */
gboolean stead_egg_class_of_dozen (double          dozen_oz,
                                   SteadEggClass  *out_class,
                                   GError        **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
