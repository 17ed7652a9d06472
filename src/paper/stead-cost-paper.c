/* stead-cost-paper.c - the cost sheet: what one unit costs, part by part, and why. */
#include "config.h"

#include "core/stead-money.h"
#include "draw/stead-cost-bar.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define BAR_HEIGHT 40.0
#define BAR_TEXT 8.0

typedef struct
{
  SteadCostSheet  sheet;
  char           *currency;
} BarFigure;

static void
bar_free (gpointer data)
{
  BarFigure *bar = data;

  g_free (bar->currency);
  g_free (bar);
}

/* The bar, and under each part that has the room what it comes to. */
static void
bar_print (cairo_t  *cr,
           double    width,
           double    height,
           gpointer  data)
{
  const BarFigure *bar = data;
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, BAR_TEXT, NULL, bar->currency };
  SteadCostBarLayout layout;
  double bar_height = height - 2 * BAR_TEXT, w, h;

  stead_cost_bar_layout (&bar->sheet, width, bar_height, &layout);
  stead_cost_bar_paint (cr, &style, &layout);
  for (int i = 0; i < layout.n; i++)
    {
      g_autofree char *text = stead_money_format (bar->sheet.parts[layout.kinds[i]].shown_cents, bar->currency);
      const SteadBox *box = &layout.boxes[i];

      stead_text_measure (cr, &style, text, 1, FALSE, &w, &h);
      if (w + BAR_TEXT / 2 <= box->width)
        stead_text_paint (cr, &style, STEAD_ROLE_INK, text, 1, FALSE, STEAD_ALIGN_CENTER,
                          box->x + box->width / 2, bar_height + h / 2 + 2);
    }
}

static void
add_bar (SteadPages            *pages,
         const SteadCostAnswer *cost)
{
  BarFigure *bar = g_new0 (BarFigure, 1);

  bar->sheet = cost->sheet;
  bar->currency = g_strdup (cost->farm->currency);
  stead_pages_add_figure (pages, BAR_HEIGHT, bar_print, bar, bar_free);
}

/* Whether anything was given: without gifts the sheet has no column for them. */
static int
n_sheet_columns (const SteadCostAnswer *cost)
{
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    if (stead_money_round (cost->sheet.parts[kind].gift_cents) > 0)
      return 5;
  return 4;
}

static void
add_part_row (SteadPages            *pages,
              const SteadCostAnswer *cost,
              SteadCostKind          kind)
{
  const SteadCostPart *part = &cost->sheet.parts[kind];
  g_autofree char *unit = stead_paper_money (cost, part->shown_cents);
  g_autofree char *total = stead_paper_moneyf (cost, part->total_cents);
  g_autofree char *gift = part->gift_cents > 0 ? stead_paper_moneyf (cost, part->gift_cents) : NULL;
  g_autofree char *share = cost->sheet.unit_cents > 0
    ? stead_words_percent ((double) part->shown_cents / (double) cost->sheet.unit_cents, 0) : NULL;
  const char *cells[] = { cost->labels[kind], unit, share, total, gift };

  if (part->total_cents > 0)
    stead_pages_add_row (pages, STEAD_ROW_PLAIN, kind, cells);
}

static void
add_total_row (SteadPages            *pages,
               const SteadCostAnswer *cost)
{
  double total = 0, gifts = 0;
  g_autofree char *unit = stead_paper_money (cost, cost->sheet.unit_cents);
  g_autofree char *all = NULL;
  g_autofree char *given = NULL;
  g_autofree char *share = stead_words_percent (1, 0);

  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    {
      total += cost->sheet.parts[kind].total_cents;
      gifts += cost->sheet.parts[kind].gift_cents;
    }
  all = stead_paper_moneyf (cost, total);
  given = gifts > 0 ? stead_paper_moneyf (cost, gifts) : NULL;
  stead_pages_add_row (pages, STEAD_ROW_TOTAL, STEAD_PAGES_NO_KEY,
                       (const char *[]) { C_("last line of a cost sheet", "All costs"), unit, share, all, given });
}

/* With and without what is not paid; what losses add. */
static void
add_other_rows (SteadPages            *pages,
                const SteadCostAnswer *cost)
{
  const SteadCostSheet *sheet = &cost->sheet;
  g_autofree char *labor = stead_paper_money (cost, sheet->unit_labor_cents);
  g_autofree char *cash = stead_paper_money (cost, sheet->unit_cash_cents);
  g_autofree char *loss = stead_paper_moneyf (cost, sheet->loss_unit_cents);

  if (sheet->parts[STEAD_COST_LABOR].shown_cents > 0)
    stead_pages_add_row (pages, STEAD_ROW_SOFT, STEAD_PAGES_NO_KEY,
                         (const char *[]) { _("With unpaid student work"), labor, NULL, NULL, NULL });
  if (sheet->unit_cash_cents != sheet->unit_cents)
    stead_pages_add_row (pages, STEAD_ROW_SOFT, STEAD_PAGES_NO_KEY,
                         (const char *[]) { _("Without gifts: what was paid"), cash, NULL, NULL, NULL });
  if (stead_money_round (sheet->loss_unit_cents) > 0)
    stead_pages_add_row (pages, STEAD_ROW_SOFT, STEAD_PAGES_NO_KEY,
                         (const char *[]) { _("Of it, for cracked and unsold units"), loss, NULL, NULL, NULL });
}

static void
add_sheet (SteadPages            *pages,
           const SteadCostAnswer *cost)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a cost sheet", "Part"), STEAD_ALIGN_LEFT, 1 },
    { stead_words_one_unit (cost->product->pack), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a cost sheet", "Share"), STEAD_ALIGN_RIGHT, 0 },
    { cost->money != NULL ? C_("column of a cost sheet", "In all")
                          : C_("column of a cost sheet", "In the period"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a cost sheet", "Of it given"), STEAD_ALIGN_RIGHT, 0 },
  };

  stead_pages_add_table (pages, columns, n_sheet_columns (cost));
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    add_part_row (pages, cost, (SteadCostKind) kind);
  add_total_row (pages, cost);
  add_other_rows (pages, cost);
}

static void
add_fact (SteadPages *pages,
          const char *name,
          const char *value)
{
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { name, value });
}

/* What a batch that is harvested at its end gave so far, and is still to give. */
static void
add_money_facts (SteadPages            *pages,
                 const SteadCostAnswer *cost)
{
  const SteadBatchMoney *money = cost->money;
  const SteadUnit *mass = stead_unit_default (STEAD_DIMENSION_MASS, cost->farm->units);
  double each = cost->product->base_per_unit;
  g_autofree char *days = stead_words_days (money->days);
  g_autofree char *left = stead_words_days (money->days_left);
  g_autofree char *came = stead_words_units (cost->product->pack, money->cost.good_base / each);
  g_autofree char *lost = stead_words_units (cost->product->pack, money->harvested.lost_base / each);
  g_autofree char *expected = stead_words_units (cost->product->pack, money->cost.expected_base / each);
  g_autofree char *feed = stead_quantity_format (money->fed_kg, mass);
  g_autofree char *spent = stead_paper_moneyf (cost, money->cost.so_far_cents);
  g_autofree char *to_come = stead_paper_moneyf (cost, money->cost.to_come_cents);
  g_autofree char *good = stead_words_units (cost->product->pack, cost->sheet.good_units);

  add_fact (pages, _("Batch"), cost->batch->name);
  add_fact (pages, _("Days so far"), days);
  add_fact (pages, _("Days until its end"), left);
  if (money->fed_kg > 0)
    add_fact (pages, _("Feed given"), feed);
  add_fact (pages, _("Cost so far"), spent);
  add_fact (pages, _("Cost still to come"), to_come);
  add_fact (pages, _("Harvested"), came);
  if (money->harvested.lost_base > 0)
    add_fact (pages, _("Lost at the harvest"), lost);
  add_fact (pages, _("Still expected"), expected);
  add_fact (pages, _("Can be sold"), good);
}

/* What came of the kitchen. */
static void
add_kitchen_facts (SteadPages            *pages,
                   const SteadCostAnswer *cost)
{
  const SteadKitchenSheet *kitchen = cost->kitchen;
  double each = cost->product->base_per_unit;
  g_autofree char *times = stead_number_format (kitchen->runs->len, 0);
  g_autofree char *made = stead_words_units (cost->product->pack, kitchen->made_base / each);
  g_autofree char *good = stead_words_units (cost->product->pack, cost->sheet.good_units);

  add_fact (pages, kitchen->recipe != NULL ? _("Recipe") : _("Item"), stead_cost_answer_source (cost));
  if (kitchen->runs->len > 0)
    add_fact (pages, _("Times made"), times);
  add_fact (pages, _("Made"), made);
  add_fact (pages, _("Can be sold"), good);
}

/* What the log of the period gave, on which every line rests. */
static void
add_flock_facts (SteadPages            *pages,
                 const SteadCostAnswer *cost)
{
  const SteadUnit *mass = stead_unit_default (STEAD_DIMENSION_MASS, cost->farm->units);
  g_autofree char *days = stead_words_days (cost->to - cost->from + 1);
  g_autofree char *eggs = stead_words_eggs (cost->totals.eggs);
  g_autofree char *cracked = stead_words_eggs (cost->totals.cracked);
  g_autofree char *feed = stead_quantity_format (cost->totals.feed_kg, mass);
  g_autofree char *lost = stead_words_flock (cost->flock->species, cost->totals.deaths);
  g_autofree char *made = stead_words_units (cost->product->pack, cost->sheet.made_units);
  g_autofree char *good = stead_words_units (cost->product->pack, cost->sheet.good_units);

  add_fact (pages, _("Flock"), cost->flock->name);
  add_fact (pages, _("Days"), days);
  add_fact (pages, _("Eggs collected"), eggs);
  add_fact (pages, _("Of them cracked"), cracked);
  add_fact (pages, _("Feed given"), feed);
  add_fact (pages, _("Birds lost"), lost);
  add_fact (pages, _("Made"), made);
  add_fact (pages, _("Can be sold"), good);
}

static void
add_facts (SteadPages            *pages,
           const SteadCostAnswer *cost)
{
  static const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_LEFT, 2 } };

  stead_pages_add_heading (pages, _("What the log of these days says"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  if (cost->kitchen != NULL)
    add_kitchen_facts (pages, cost);
  else if (cost->money != NULL)
    add_money_facts (pages, cost);
  else
    add_flock_facts (pages, cost);
}

static void
add_whys (SteadPages            *pages,
          const SteadCostAnswer *cost)
{
  stead_pages_add_heading (pages, _("How each line is worked out"));
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    if (cost->whys[kind] != NULL)
      stead_pages_add_why (pages, cost->whys[kind]);
  stead_pages_add_why (pages, cost->total_why);
}

/* Entries that say the same of the same thing, one after the other: a bag of feed
 * lasts for weeks, and on paper it is one line. */
typedef struct
{
  SteadDay              from, to;
  const SteadCostEntry *first;
  guint                 n;
  double                base;
  gint64                cents;
} Run;

static Run
run_at (GPtrArray *entries,
        guint      i)
{
  const SteadCostEntry *first = entries->pdata[i];
  Run run = { first->day, first->day, first, 1, first->base, first->cents };

  for (i++; first->unit != NULL && i < entries->len; i++)
    {
      const SteadCostEntry *entry = entries->pdata[i];

      if (entry->unit != first->unit || entry->day < run.to || !g_str_equal (entry->what, first->what))
        break;
      run.to = entry->day;
      run.base += entry->base;
      run.cents += entry->cents;
      run.n++;
    }
  return run;
}

static char *
run_days (const Run *run)
{
  g_autofree char *from = NULL;
  g_autofree char *to = NULL;

  if (run->from == STEAD_DAY_NONE)
    return NULL;
  from = stead_day_format (run->from, STEAD_DAY_STYLE_MEDIUM);
  if (run->from == run->to)
    return g_steal_pointer (&from);
  to = stead_day_format (run->to, STEAD_DAY_STYLE_MEDIUM);
  return g_strdup_printf (_("%s to %s"), from, to);
}

/* @counted: there is a column for the number of entries */
static void
add_run (SteadPages            *pages,
         const SteadCostAnswer *cost,
         const Run             *run,
         gboolean               counted)
{
  g_autofree char *days = run_days (run);
  g_autofree char *cents = stead_paper_money (cost, run->cents);
  g_autofree char *quantity = run->n > 1 ? stead_quantity_format (run->base, run->first->unit)
                                         : g_strdup (run->first->quantity);
  g_autofree char *number = g_strdup_printf ("%u", run->n);
  const char *cells[] = { days, run->first->what, quantity, cents, NULL };

  if (counted)
    {
      cells[4] = cells[3];
      cells[3] = cells[2];
      cells[2] = number;
    }
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, cells);
}

/* The entries as runs.  (transfer full) (element-type Run) */
static GArray *
find_runs (GPtrArray *entries,
           gboolean  *out_joined)
{
  GArray *runs = g_array_new (FALSE, FALSE, sizeof (Run));

  for (guint i = 0; i < entries->len; i += g_array_index (runs, Run, runs->len - 1).n)
    {
      Run run = run_at (entries, i);

      g_array_append_val (runs, run);
    }
  *out_joined = runs->len < entries->len;
  return runs;
}

/* One part's entries under its name; they sum to the part. */
static gboolean
add_entries (SteadPages             *pages,
             SteadStore             *store,
             const SteadCostAnswer  *cost,
             SteadCostKind           kind,
             GError                **error)
{
  const SteadPagesColumn all_columns[] = {
    { C_("column of costs", "Date"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of costs", "What"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of costs", "Entries"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of costs", "Quantity"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of costs", "Amount"), STEAD_ALIGN_RIGHT, 0 },
  };
  const SteadPagesColumn columns[] = { all_columns[0], all_columns[1], all_columns[3], all_columns[4] };
  g_autoptr(GPtrArray) entries = stead_cost_answer_entries (store, cost, kind, error);
  g_autofree char *total = stead_paper_moneyf (cost, cost->sheet.parts[kind].total_cents);
  const char *last[] = { NULL, C_("last line of a table", "Together"), NULL, total, total };
  g_autoptr(GArray) runs = NULL;
  gboolean joined;

  if (entries == NULL)
    return FALSE;
  if (entries->len == 0)
    return TRUE;
  runs = find_runs (entries, &joined);
  stead_pages_add_subheading (pages, cost->labels[kind]);
  stead_pages_add_table (pages, joined ? all_columns : columns, joined ? 5 : 4);
  for (guint i = 0; i < runs->len; i++)
    add_run (pages, cost, &g_array_index (runs, Run, i), joined);
  if (joined)
    last[3] = NULL;
  stead_pages_add_row (pages, STEAD_ROW_TOTAL, STEAD_PAGES_NO_KEY, last);
  return TRUE;
}

static SteadPages *
begin (const SteadImprint    *imprint,
       const SteadCostAnswer *cost)
{
  /* Translators: title of the cost sheet: the product's name, then "a dozen". */
  g_autofree char *title = g_strdup_printf (_("%1$s: what %2$s costs"), cost->product->name,
                                            stead_words_per_unit (cost->product->pack));
  g_autofree char *period = stead_paper_period (cost);
  SteadPages *pages = stead_pages_new (imprint, title, period);

  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, cost->sentence);
  add_bar (pages, cost);
  add_sheet (pages, cost);
  if (cost->caution != NULL)
    stead_pages_add_caution (pages, cost->caution);
  return pages;
}

SteadPages *
stead_cost_paper_new (SteadStore               *store,
                      const char               *of,
                      const SteadPaperOptions  *options,
                      GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadCostAnswer) cost = imprint == NULL ? NULL : stead_paper_read_cost (store, of, options, error);
  g_autoptr(SteadPages) pages = NULL;

  if (cost == NULL)
    return NULL;
  pages = begin (imprint, cost);
  add_facts (pages, cost);
  add_whys (pages, cost);
  stead_pages_add_heading (pages, _("What stands behind each part"));
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    if (cost->sheet.parts[kind].total_cents > 0
        && !add_entries (pages, store, cost, (SteadCostKind) kind, error))
      return NULL;
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
