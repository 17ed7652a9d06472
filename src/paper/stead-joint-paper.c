/* stead-joint-paper.c - one cost shared by what comes of it, several ways side by side. */
#include "config.h"

#include "answer/stead-subject.h"
#include "core/stead-money.h"
#include "paper/stead-paper-private.h"
#include "paper/stead-price-figure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
money (const SteadJointAnswer *answer,
       double                  cents)
{
  return stead_money_format (stead_money_round (cents), answer->farm->currency);
}

/* --- what each bears ------------------------------------------------------------------- */

static void
add_table (SteadPages *pages,
           const char *first)
{
  const SteadPagesColumn columns[] = {
    { first, STEAD_ALIGN_LEFT, 1 },
    { stead_joint_method_name (STEAD_JOINT_PHYSICAL), STEAD_ALIGN_RIGHT, 0.8 },
    { stead_joint_method_name (STEAD_JOINT_SPLIT_OFF_VALUE), STEAD_ALIGN_RIGHT, 0.8 },
    { stead_joint_method_name (STEAD_JOINT_NRV), STEAD_ALIGN_RIGHT, 0.8 },
    { stead_joint_method_name (STEAD_JOINT_CONSTANT_MARGIN), STEAD_ALIGN_RIGHT, 0.8 },
  };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
}

static void
add_cells (SteadPages   *pages,
           SteadRowLook  look,
           const char   *name,
           char        **cells)
{
  const char *row[STEAD_N_JOINT_METHODS + 1] = { name };

  for (int i = 0; i < STEAD_N_JOINT_METHODS; i++)
    row[i + 1] = cells[i];
  stead_pages_add_row (pages, look, STEAD_PAGES_NO_KEY, row);
  for (int i = 0; i < STEAD_N_JOINT_METHODS; i++)
    g_free (cells[i]);
}

static void
add_shares (SteadPages             *pages,
            const SteadJointAnswer *answer)
{
  char *cells[STEAD_N_JOINT_METHODS];

  stead_pages_add_heading (pages, _("What each bears of it"));
  add_table (pages, C_("column of shares", "Share of the cost"));
  for (guint i = 0; i < answer->parts->len; i++)
    {
      const SteadJointPart *part = answer->parts->pdata[i];

      if (!part->carries)
        continue;
      for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
        cells[method] = answer->usable[method] ? money (answer, (double) part->share_cents[method]) : g_strdup ("–");
      add_cells (pages, STEAD_ROW_PLAIN, part->name, cells);
    }
  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    cells[method] = answer->usable[method] ? money (answer, (double) answer->joint_cents) : g_strdup ("–");
  add_cells (pages, STEAD_ROW_TOTAL, _("Together"), cells);
}

static void
add_units (SteadPages             *pages,
           const SteadJointAnswer *answer)
{
  char *cells[STEAD_N_JOINT_METHODS];

  stead_pages_add_heading (pages, _("What one then costs, with its own further work"));
  add_table (pages, C_("column of shares", "Cost of one"));
  for (guint i = 0; i < answer->parts->len; i++)
    {
      const SteadJointPart *part = answer->parts->pdata[i];

      if (!part->carries)
        continue;
      for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
        {
          double unit = stead_joint_unit_cents (part, method);
          g_autofree char *cents = isfinite (unit) ? money (answer, unit) : NULL;

          cells[method] = answer->usable[method] && cents != NULL
                          ? g_strdup_printf (C_("price of a unit", "%s %s"), cents, stead_words_per_unit (part->pack))
                          : g_strdup ("–");
        }
      add_cells (pages, STEAD_ROW_PLAIN, part->name, cells);
    }
}

/* --- what it rests on -------------------------------------------------------------------- */

static char *
cents_or_dash (const SteadJointAnswer *answer,
               double                  cents)
{
  return cents > 0 ? money (answer, cents) : g_strdup ("–");
}

static void
add_facts (SteadPages             *pages,
           const SteadJointAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of shares", "Product"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of shares", "How much"), STEAD_ALIGN_RIGHT, 0.7 },
    { C_("column of shares", "Weight of one"), STEAD_ALIGN_RIGHT, 0.6 },
    { C_("column of shares", "Price as it comes"), STEAD_ALIGN_RIGHT, 0.6 },
    { C_("column of shares", "After more work"), STEAD_ALIGN_RIGHT, 0.6 },
    { C_("column of shares", "Cost of that work"), STEAD_ALIGN_RIGHT, 0.6 },
    { C_("column of shares", "The work adds"), STEAD_ALIGN_RIGHT, 0.6 },
  };
  const SteadUnit *weight = stead_unit_by_id (answer->farm->units == STEAD_UNITS_US ? "lb" : "kg");

  stead_pages_add_heading (pages, _("What this rests on"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->parts->len; i++)
    {
      const SteadJointPart *part = answer->parts->pdata[i];
      double kg = part->value[STEAD_JOINT_WEIGHT];
      g_autofree char *units = stead_words_units (part->pack, round (part->value[STEAD_JOINT_QUANTITY] * 10) / 10);
      g_autofree char *one = kg > 0 ? stead_quantity_format (kg, weight) : g_strdup ("–");
      g_autofree char *split = cents_or_dash (answer, part->value[STEAD_JOINT_SPLIT]);
      g_autofree char *later = cents_or_dash (answer, part->value[STEAD_JOINT_FINAL]);
      g_autofree char *work = cents_or_dash (answer, part->value[STEAD_JOINT_FURTHER]);
      g_autofree char *more = isfinite (part->more_cents) ? money (answer, part->more_cents) : g_strdup ("–");

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { part->name, units, one, split, later, work, more });
    }
  stead_pages_add_note (pages, _("A shared cost cannot tell whether to work on something further: it is spent either way. "
                                 "Look at what the work adds."));
}

/* --- the batch ------------------------------------------------------------------------------ */

/* Without a name the first that has a cost to share. */
static SteadJointAnswer *
read_answer (SteadStore  *store,
             const char  *of,
             GError     **error)
{
  g_autoptr(GPtrArray) batches = NULL;
  gint64 id;

  if (of == NULL)
    {
      batches = stead_joint_batches (store, error);
      if (batches == NULL)
        return NULL;
      if (batches->len > 0)
        return stead_joint_answer_new (store, ((const SteadBatch *) batches->pdata[0])->id, error);
    }
  return stead_subject_batch (store, of, &id, error) ? stead_joint_answer_new (store, id, error) : NULL;
}

SteadPages *
stead_joint_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  SteadJointAnswer *answer = imprint == NULL ? NULL : read_answer (store, of, error);
  g_autoptr(GPtrArray) whys = NULL;
  g_autofree char *title = NULL;
  SteadFigure *figure;
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  /* Translators: title of a page; %s is a batch. */
  title = g_strdup_printf (_("%s: one cost, shared in several ways"), answer->batch->name);
  whys = stead_joint_answer_whys (answer);
  figure = stead_joint_figure_new (answer);
  stead_figure_own (figure, answer, (GDestroyNotify) stead_joint_answer_free);
  pages = stead_pages_new (imprint, title, NULL);
  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->advice != NULL)
    stead_pages_add_text (pages, answer->advice);
  stead_pages_add_figure (pages, stead_joint_figure_height (answer), stead_figure_print, figure, stead_figure_free);
  add_shares (pages, answer);
  add_units (pages, answer);
  add_facts (pages, answer);
  if (answer->caution != NULL)
    stead_pages_add_note (pages, answer->caution);
  stead_pages_add_heading (pages, _("How it is worked out"));
  for (guint i = 0; i < whys->len; i++)
    stead_pages_add_why (pages, whys->pdata[i]);
  stead_pages_settle (pages);
  return pages;
}
