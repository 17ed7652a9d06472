/* stead-label-why.c - what stands on a label, and how large, worked out. */
#include "config.h"

#include "answer/stead-label-private.h"
#include "answer/stead-limits.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define NO_SOURCE N_("Common practice, no source.")

/* --- the net quantity --------------------------------------------------------------------- */

/* "1,360.78 g ÷ 28.3495 g = 48 oz; Net Wt. 48 oz (3 lb) 1361 g" */
static SteadWhy *
net_why (const SteadLabelFacts *facts)
{
  const SteadLabelAnswer *out = facts->out;
  gboolean mass = facts->item->unit->dimension == STEAD_DIMENSION_MASS;
  double base = facts->product->base_per_unit, ounce = mass ? STEAD_LABEL_OZ_KG : STEAD_LABEL_FLOZ_L;
  const char *fine = mass ? "g" : "mL", *coarse = mass ? "oz" : "fl oz";
  g_autofree char *all = stead_number_format (base * 1000, 2);
  g_autofree char *one = stead_number_format (ounce * 1000, 4);
  g_autofree char *ounces = stead_number_format (base / ounce, 2);

  return stead_why_new (g_strdup (_("Net quantity")),
                        _("What the product says is in one pack, in ounces and in the metric measure: without the pack itself. "
                          "From a pound or a pint on the ounces are told in whole pounds, pints or quarts too."),
                        g_strdup_printf ("%s %s ÷ %s %s = %s %s\n%s", all, fine, one, fine, ounces, coarse, out->net),
                        _("21 CFR 101.7. An ounce is 28.3495 g, a fluid ounce 29.5735 mL: NIST Handbook 44, appendix C."));
}

static SteadWhy *
count_why (const SteadLabelFacts *facts)
{
  return stead_why_new (g_strdup (_("Net quantity")), _("How many the product says are in one pack."),
                        g_strdup (facts->out->net), "21 CFR 101.7");
}

/* --- the letters ---------------------------------------------------------------------------- */

/* A line more: "up to 25 sq in: 0.125 in" */
static void
add_step (GString          *text,
          const SteadLimit *step)
{
  const char *limit = strpbrk (step->when, "<>");
  gboolean above = limit != NULL && *limit == '>';
  g_autofree char *panel = NULL, *height = stead_number_format (step->value, 4);

  g_return_if_fail (limit != NULL);
  panel = stead_number_format (g_ascii_strtod (limit + strspn (limit, "<>="), NULL), 0);
  if (text->len > 0)
    g_string_append_c (text, '\n');
  /* Translators: an area in square inches, a height in inches. */
  g_string_append_printf (text, above ? _("above %1$s square inches: %2$s inch") : _("up to %1$s square inches: %2$s inch"),
                          panel, height);
}

static SteadWhy *
letters_why (const SteadLabelAnswer *out)
{
  static const char * const steps[] = { "type-5", "type-25", "type-100", "type-400", "type-above" };
  GString *worked = g_string_new (NULL);
  g_autofree char *panel = stead_number_format (out->panel_in2, 1);
  g_autofree char *height = stead_number_format (out->net_letter_in, 4);
  g_autofree char *source = stead_limits_source (out->net_rule);

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      const SteadLimit *step = stead_limit_table_by_id (stead_limits_get (), steps[i]);

      if (step != NULL)
        add_step (worked, step);
    }
  /* Translators: on a line of its own: an area in square inches, a height in inches. */
  g_string_append_printf (worked, _("\nHere %1$s square inches: %2$s inch"), panel, height);
  return stead_why_new (g_strdup (_("How high the letters are")),
                        _("The larger the main side of the pack, the higher the letters of the net quantity. All other words: a "
                          "sixteenth of an inch."),
                        g_string_free (worked, FALSE), source);
}

/* --- the days ---------------------------------------------------------------------------------- */

static SteadWhy *
days_why (const SteadLabelFacts *facts)
{
  const SteadLot *lot = facts->out->lot;
  g_autofree char *from = stead_day_format (lot->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *best = stead_day_format (lot->best_by, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *days = stead_words_days (facts->item->shelf_life_days);
  gboolean usual = facts->item->shelf_life_days > 0 && lot->day + facts->item->shelf_life_days == lot->best_by;

  return stead_why_new (g_strdup (_("Best-by day")),
                        _("The day it was made or packed + the shelf life of the item in Keep, unless another day was entered with "
                          "the lot."),
                        usual ? g_strdup_printf ("%s + %s = %s", from, days, best)
                        /* Translators: a day. */
                        : g_strdup_printf (_("Entered with the lot: %s"), best),
                        _("The farm’s own shelf life: no source of the program’s."));
}

/* --- all ------------------------------------------------------------------------------------------ */

void
stead_label_why_ingredients (SteadLabelFacts    *facts,
                             const char * const *names,
                             const double       *kg,
                             gsize               n)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, facts->farm->units);
  GString *worked = g_string_new (NULL);

  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *weight = kg[i] > 0 ? stead_quantity_format (kg[i], unit) : g_strdup (_("weight not known"));

      if (i > 0)
        g_string_append_c (worked, '\n');
      /* Translators: an ingredient, its weight. */
      g_string_append_printf (worked, _("%1$s: %2$s"), names[i], weight);
    }
  g_ptr_array_add (facts->out->whys, stead_why_new (
    g_strdup (_("Order of the ingredients")),
    _("The heaviest first, as they go into the recipe once, peeled and trimmed. Pieces and cups count with what one weighs."),
    g_string_free (worked, FALSE), "21 CFR 101.4(a)(1)"));
}

void
stead_label_word_whys (SteadLabelFacts *facts)
{
  SteadLabelAnswer *out = facts->out;
  SteadDimension dimension = facts->item->unit->dimension;

  if (out->net != NULL)
    g_ptr_array_add (out->whys, dimension == STEAD_DIMENSION_MASS || dimension == STEAD_DIMENSION_VOLUME ? net_why (facts)
                                : count_why (facts));
  if (out->kind == STEAD_LABEL_SHELF)
    return;
  g_ptr_array_add (out->whys, letters_why (out));
  if (out->lot->best_by != STEAD_DAY_NONE)
    g_ptr_array_add (out->whys, days_why (facts));
}

SteadWhy *
stead_label_sheet_why (const SteadLabelSheet *sheet,
                       int                    first,
                       int                    n)
{
  g_autofree char *columns = stead_number_format (sheet->columns, 0), *rows = stead_number_format (sheet->rows, 0);
  g_autofree char *on_page = stead_number_format (sheet->columns * sheet->rows, 0);
  g_autofree char *gone = stead_number_format (first, 0), *wanted = stead_number_format (n, 0);
  int pages = stead_label_sheet_pages (sheet, first, n);
  g_autofree char *rounded = g_strdup_printf (ngettext ("%d page", "%d pages", pages), pages);

  return stead_why_new (g_strdup (_("Labels and pages")),
                        _("Labels on a page: columns × rows. Pages: (used up already + how many labels) ÷ labels on a page, rounded "
                          "up."),
                        g_strdup_printf ("%s × %s = %s\n(%s + %s) ÷ %s → %s", columns, rows, on_page, gone, wanted, on_page, rounded),
                        _(NO_SOURCE));
}
