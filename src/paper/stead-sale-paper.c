/* stead-sale-paper.c - the plan of a sale day on paper, and what all its papers share. */
#include "config.h"

#include "answer/stead-sale-lots.h"
#include "answer/stead-subject.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"
#include "paper/stead-sale-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* --- shared -------------------------------------------------------------------------------- */

void
stead_sale_facts_clear (SteadSaleFacts *facts)
{
  g_clear_pointer (&facts->imprint, stead_imprint_free);
  g_clear_pointer (&facts->farm, stead_farm_free);
  g_clear_pointer (&facts->sale, stead_sale_free);
}

gboolean
stead_sale_facts_read (SteadStore  *store,
            const char  *of,
            SteadSaleFacts       *facts,
            GError     **error)
{
  gint64 id;

  if (!stead_subject_sale (store, of, &id, error))
    return FALSE;
  facts->imprint = stead_imprint_new (store, error);
  facts->farm = facts->imprint != NULL ? stead_farm_repo_get (store, error) : NULL;
  facts->sale = facts->farm != NULL ? stead_sale_repo_get (store, id, error) : NULL;
  return facts->sale != NULL;
}

/* Day, hours and place: whoever holds the paper has to be there. */
static void
add_when (SteadPages *pages,
          const char *when)
{
  g_autofree char *markup = g_markup_escape_text (when, -1);

  stead_pages_add_text (pages, markup);
}

SteadPages *
stead_sale_paper_begin (const SteadSaleFacts *facts,
       const char  *what)
{
  g_autofree char *when = stead_sale_when (facts->sale);
  /* Translators: a sale, and what the paper is: "Winter market: tally sheet". */
  g_autofree char *title = g_strdup_printf (_("%s: %s"), facts->sale->name, what);
  SteadPages *pages = stead_pages_new (facts->imprint, title, when);

  stead_pages_add_title (pages, title);
  add_when (pages, when);
  return pages;
}

char *
stead_sale_paper_money (const SteadSaleFacts *facts,
       double       cents)
{
  return isnan (cents) ? g_strdup ("–") : stead_money_format (stead_money_round (cents), facts->farm->currency);
}

void
stead_sale_paper_row (SteadPages *pages,
         SteadRowLook look,
         const char *a,
         const char *b,
         const char *c,
         const char *d,
         const char *e,
         const char *f)
{
  const char *cells[] = { a, b, c, d, e, f };

  stead_pages_add_row (pages, look, STEAD_PAGES_NO_KEY, cells);
}

/* --- the plan ------------------------------------------------------------------------------ */

static void
add_plan_goods (SteadPages            *pages,
                const SteadSaleFacts           *facts,
                const SteadSaleAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a sale plan", "Product"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a sale plan", "Bring"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a sale plan", "Price"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a sale plan", "Cost of one"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a sale plan", "Asked for"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a sale plan", "Pays best"), STEAD_ALIGN_RIGHT, 0 },
  };

  stead_pages_add_heading (pages, _("How many to bring"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];
      g_autofree char *bring = stead_words_units (line->good->pack, line->good->planned);
      g_autofree char *price = stead_sale_paper_money (facts, (double) line->good->price_cents);
      g_autofree char *cost = stead_sale_paper_money (facts, line->unit_cents);
      g_autofree char *asked = isnan (line->demand_units) ? NULL
                               : stead_words_units (line->good->pack, round (line->demand_units));
      g_autofree char *best = isnan (line->best_units) ? NULL : stead_words_units (line->good->pack, line->best_units);

      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, line->good->name, bring, price, cost, asked != NULL ? asked : "–",
               best != NULL ? best : "–");
    }
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];
      g_autofree char *text = line->text != NULL ? g_strdup_printf (_("%s: %s"), line->good->name, line->text) : NULL;

      if (text != NULL)
        stead_pages_add_note (pages, text);
    }
}

static gboolean
has_lots (const SteadSaleAnswer *answer)
{
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];

      if (line->lots != NULL && line->good->planned > 0)
        return TRUE;
    }
  return FALSE;
}

/* Whoever packs reads it: a box to tick for each lot. */
static void
add_line_lots (SteadPages                *pages,
               const SteadSaleLineAnswer *line)
{
  double rest = stead_sale_lots_rest (line->lots, line->good->planned);

  for (guint i = 0; i < line->lots->len; i++)
    {
      const SteadSaleLotChoice *choice = line->lots->pdata[i];
      g_autofree char *amount = stead_words_units (line->good->pack, choice->units);
      g_autofree char *day = choice->best_by != STEAD_DAY_NONE ? stead_day_format (choice->best_by, STEAD_DAY_STYLE_SHORT)
                                                                : g_strdup ("–");

      if (choice->units > 0)
        stead_sale_paper_row (pages, STEAD_ROW_PLAIN, "☐", line->good->name, choice->code, day, amount, NULL);
    }
  if (rest > 0)
    {
      g_autofree char *amount = stead_words_units (line->good->pack, rest);

      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, "☐", line->good->name, _("made or harvested until then"), "–", amount, NULL);
    }
}

static void
add_plan_lots (SteadPages            *pages,
               const SteadSaleAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { NULL, STEAD_ALIGN_LEFT, 0 },
    { C_("column of a sale plan", "Product"), STEAD_ALIGN_LEFT, 0.8 },
    { C_("column of a sale plan", "Lot"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a sale plan", "Best by"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a sale plan", "Take"), STEAD_ALIGN_RIGHT, 0 },
  };

  if (!has_lots (answer))
    return;
  stead_pages_add_heading (pages, _("Out of which lots"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];

      if (line->lots != NULL && line->good->planned > 0)
        add_line_lots (pages, line);
    }
}

static void
add_plan_costs (SteadPages  *pages,
                const SteadSaleFacts *facts)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_RIGHT, 0 } };
  gint64 sum = 0;
  g_autofree char *total = NULL;

  if (facts->sale->costs->len == 0)
    return;
  stead_pages_add_heading (pages, _("What the day costs"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < facts->sale->costs->len; i++)
    {
      const SteadSaleCost *cost = facts->sale->costs->pdata[i];
      g_autofree char *cents = stead_sale_paper_money (facts, (double) stead_sale_cost_paid (cost));

      sum += stead_sale_cost_paid (cost);
      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, cost->name, cents, NULL, NULL, NULL, NULL);
    }
  total = stead_sale_paper_money (facts, (double) sum);
  stead_sale_paper_row (pages, STEAD_ROW_TOTAL, _("Together"), total, NULL, NULL, NULL, NULL);
}

static void
add_plan_shifts (SteadPages  *pages,
                 const SteadSaleFacts *facts)
{
  const SteadPagesColumn columns[] = { { C_("column of a sale plan", "Helper"), STEAD_ALIGN_LEFT, 1 },
                                       { C_("column of a sale plan", "Duty"), STEAD_ALIGN_LEFT, 1 },
                                       { C_("column of a sale plan", "From, to"), STEAD_ALIGN_LEFT, 0 },
                                       { C_("column of a sale plan", "Hours"), STEAD_ALIGN_RIGHT, 0 } };

  if (facts->sale->shifts->len == 0)
    return;
  stead_pages_add_heading (pages, _("Who helps, and when"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < facts->sale->shifts->len; i++)
    {
      const SteadSaleShift *shift = facts->sale->shifts->pdata[i];
      g_autofree char *from = stead_sale_clock (shift->from_min);
      g_autofree char *to = stead_sale_clock (shift->to_min);
      g_autofree char *span = g_strdup_printf (_("%s to %s"), from, to);
      g_autofree char *hours = stead_hours_format (shift->to_min - shift->from_min - shift->break_min);

      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, shift->person_name, shift->duty != NULL ? shift->duty : "–", span, hours, NULL, NULL);
    }
}

static void
add_bring (SteadPages  *pages,
           const SteadSaleFacts *facts)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 } };

  if (facts->sale->bring->len == 0)
    return;
  stead_pages_add_heading (pages, _("What to bring"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < facts->sale->bring->len; i++)
    {
      const SteadSaleBring *bring = facts->sale->bring->pdata[i];

      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, bring->packed ? "☑" : "☐", bring->text, NULL, NULL, NULL, NULL);
    }
}

SteadPages *
stead_sale_paper_new (SteadStore               *store,
                      const char               *of,
                      const SteadPaperOptions  *options,
                      GError                  **error)
{
  g_auto(SteadSaleFacts) facts = { 0 };
  g_autoptr(SteadSaleAnswer) answer = NULL;
  g_autoptr(SteadPages) pages = NULL;

  if (!stead_sale_facts_read (store, of, &facts, error))
    return NULL;
  answer = stead_sale_answer_new (store, facts.sale->id, error);
  if (answer == NULL)
    return NULL;
  pages = stead_sale_paper_begin (&facts, _("plan"));
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->caution != NULL)
    stead_pages_add_caution (pages, answer->caution);
  add_plan_goods (pages, &facts, answer);
  add_plan_lots (pages, answer);
  add_plan_costs (pages, &facts);
  add_plan_shifts (pages, &facts);
  add_bring (pages, &facts);
  if (facts.sale->note != NULL)
    stead_pages_add_note (pages, facts.sale->note);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
