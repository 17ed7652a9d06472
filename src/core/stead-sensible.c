/* stead-sensible.c - amounts of a recipe as a cook can measure them. */
#include "config.h"

#include "core/stead-round.h"
#include "core/stead-sensible.h"
#include "core/stead-unit-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Parts of a measure, small to large. */
typedef struct
{
  double      part;
  const char *text;
} Part;

static const Part parts[] = {
  { 1.0 / 8, "1/8" }, { 1.0 / 4, "1/4" }, { 1.0 / 3, "1/3" }, { 1.0 / 2, "1/2" }, { 2.0 / 3, "2/3" }, { 3.0 / 4, "3/4" },
};

/* A cup or spoon: what parts of it are sold, and from where to where it is handy. */
typedef struct
{
  const char *id;
  double      least;      /* smallest amount of it that can be measured */
  double      most;       /* from here on the next larger one is handier */
  const char *smaller;    /* (nullable) */
  const char *larger;     /* (nullable) */
  gboolean    in_thirds;
  gboolean    in_eighths;
} Vessel;

static const Vessel vessels[] = {
  { "tsp", 1.0 / 8, 3, NULL, "tbsp", FALSE, TRUE },
  { "tbsp", 1.0 / 2, 4, "tsp", "cup", FALSE, FALSE },
  { "floz", 1.0 / 2, 16, "tbsp", "cup", FALSE, FALSE },
  { "cup", 1.0 / 4, 16, "tbsp", "qt", TRUE, FALSE },
  { "pt", 1.0 / 2, 8, "cup", "qt", FALSE, FALSE },
  { "qt", 1.0 / 4, 16, "cup", "gal", FALSE, FALSE },
  { "gal", 1.0 / 4, HUGE_VAL, "qt", NULL, FALSE, FALSE },
};

/* Above so many, halves are close enough. */
#define MANY 8

/* A step is at most this part of the amount. */
#define FINEST 50

static const Vessel *
vessel_of (const SteadUnit *unit)
{
  for (gsize i = 0; i < G_N_ELEMENTS (vessels); i++)
    if (g_str_equal (vessels[i].id, unit->id))
      return &vessels[i];
  return NULL;
}

static gboolean
has_part (const Vessel *vessel,
          const Part   *part,
          double        whole)
{
  if (part->part == 1.0 / 2)
    return TRUE;
  if (whole >= MANY)
    return FALSE;
  if (part->part == 1.0 / 8)
    return vessel->in_eighths && whole < 1;
  if (part->part == 1.0 / 4 || part->part == 3.0 / 4)
    /* No spoon of 1/4 tbsp is sold. */
    return !g_str_equal (vessel->id, "tbsp") && !g_str_equal (vessel->id, "floz");
  return vessel->in_thirds;
}

/* The nearest amount that @vessel can measure, at least its least. */
static double
in_vessel (const Vessel *vessel,
           double        amount)
{
  double whole = stead_round_down (amount), rest = amount - whole, best = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (has_part (vessel, &parts[i], whole) && fabs (rest - parts[i].part) < fabs (rest - best))
      best = parts[i].part;
  if (fabs (rest - 1) < fabs (rest - best))
    best = 1;
  return MAX (whole + best, vessel->least);
}

static double
converted (double      amount,
           const char *from,
           const char *to)
{
  return stead_quantity_from_base (stead_quantity_to_base (amount, stead_unit_by_id (from)), stead_unit_by_id (to));
}

/* Goes to a smaller one where there is too little of it, and to a larger one
 * where that comes out no worse. */
static double
in_vessels (const Vessel **vessel,
            double         amount)
{
  double rounded, other, other_rounded;

  while ((*vessel)->smaller != NULL && amount < (*vessel)->least * (1 - STEAD_ROUND_NOISE))
    {
      const Vessel *next = vessel_of (stead_unit_by_id ((*vessel)->smaller));

      g_return_val_if_fail (next != NULL, amount);
      amount = converted (amount, (*vessel)->id, next->id);
      *vessel = next;
    }
  rounded = in_vessel (*vessel, amount);
  while ((*vessel)->larger != NULL && amount >= (*vessel)->most * (1 - STEAD_ROUND_NOISE))
    {
      const Vessel *next = vessel_of (stead_unit_by_id ((*vessel)->larger));

      g_return_val_if_fail (next != NULL, amount);
      other = converted (amount, (*vessel)->id, next->id);
      other_rounded = in_vessel (next, other);
      if (fabs (other_rounded / other - 1) > fabs (rounded / amount - 1) + STEAD_ROUND_NOISE)
        break;
      amount = other;
      rounded = other_rounded;
      *vessel = next;
    }
  return rounded;
}

/* The largest of 1, 2 and 5 times a power of ten that is at most a fiftieth. */
static double
decimal_step (double amount)
{
  double most = amount / FINEST * (1 + STEAD_ROUND_NOISE);
  double power = pow (10, floor (log10 (most)));

  return most >= 5 * power ? 5 * power : most >= 2 * power ? 2 * power : power;
}

/* A kitchen scale shows tenths of an ounce. */
#define OUNCE_STEP 0.1

/* Pounds are halved again and again, down to an ounce. */
static double
pound_step (double amount)
{
  double step = 16;

  while (step > 1.0 / 16 && step * FINEST > amount * (1 + STEAD_ROUND_NOISE))
    step /= 2;
  return step;
}

static double
in_steps (double           amount,
          const SteadUnit *unit)
{
  double step = g_str_equal (unit->id, "lb") ? pound_step (amount) : decimal_step (amount);

  if (g_str_equal (unit->id, "oz"))
    step = MAX (step, OUNCE_STEP);
  return MAX (stead_round_half_away (amount / step), 1) * step;
}

void
stead_sensible_amount (double           amount,
                       const SteadUnit *unit,
                       SteadSensible   *out)
{
  const Vessel *vessel;
  double exact;

  g_return_if_fail (unit != NULL && out != NULL);
  g_return_if_fail (isfinite (amount));
  vessel = vessel_of (unit);
  out->unit = unit;
  out->amount = amount;
  out->effect = 1;
  if (!(amount > 0))
    return;
  if (unit->dimension == STEAD_DIMENSION_COUNT)
    {
      /* A dozen is not broken into decimals, but into eggs. */
      double pieces = MAX (stead_round_half_away (stead_quantity_to_base (amount, unit)), 1);

      out->amount = stead_quantity_from_base (pieces, unit);
    }
  else if (vessel != NULL)
    {
      out->amount = in_vessels (&vessel, amount);
      out->unit = stead_unit_by_id (vessel->id);
    }
  else
    {
      out->amount = in_steps (amount, unit);
    }
  exact = converted (amount, unit->id, out->unit->id);
  out->effect = fabs (out->amount / exact - 1) < STEAD_ROUND_NOISE ? 1 : out->amount / exact;
}

char *
stead_sensible_format (double           amount,
                       const SteadUnit *unit)
{
  const char *symbol, *text = NULL;
  double whole;

  g_return_val_if_fail (unit != NULL, NULL);
  whole = stead_round_down (amount);
  symbol = stead_unit_symbol_for (amount <= 1 ? 1 : amount, unit);    /* 1/2 cup, 1 1/2 cups */
  if (vessel_of (unit) == NULL || !(amount > 0))
    {
      double base = stead_quantity_to_base (amount, unit);

      /* Dozens and pounds with what is left over. */
      if (g_str_equal (unit->id, "doz") || g_str_equal (unit->id, "lb"))
        return stead_quantity_format_mixed (base, unit);
      return stead_quantity_format (base, unit);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (fabs (amount - whole - parts[i].part) < 1e-6)
      text = parts[i].text;
  if (fabs (amount - whole) < 1e-6)
    {
      g_autofree char *number = stead_number_format (whole, 0);

      /* Translators: an amount of a recipe: "2 cups". */
      return g_strdup_printf (C_("amount and unit", "%s %s"), number, symbol);
    }
  if (text == NULL)
    return stead_quantity_format (stead_quantity_to_base (amount, unit), unit);
  if (whole < 1)
    return g_strdup_printf (C_("amount and unit", "%s %s"), text, symbol);
  /* Translators: an amount of a recipe: "1 1/2 cups". */
  return g_strdup_printf (C_("amount and unit", "%d %s %s"), (int) whole, text, symbol);
}

double
stead_scale_whole (double pieces,
                   double factor)
{
  g_return_val_if_fail (pieces > 0 && factor > 0, NAN);
  return MAX (stead_round_half_away (pieces * factor), 1) / pieces;
}

double
stead_scale_on_hand (const double *need,
                     const double *on_hand,
                     gsize         n,
                     gsize        *out_limiting)
{
  double least = NAN;

  g_return_val_if_fail ((need != NULL && on_hand != NULL) || n == 0, NAN);
  for (gsize i = 0; i < n; i++)
    {
      double times = on_hand[i] / need[i];

      if (!(need[i] > 0) || !(isnan (least) || times < least))
        continue;
      least = times;
      if (out_limiting != NULL)
        *out_limiting = i;
    }
  return least;
}
