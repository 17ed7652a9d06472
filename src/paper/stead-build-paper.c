/* stead-build-paper.c - the proposal for a build: one page with its plan, then the bill,
 * the money, the path, the work and the cautions. */
#include "config.h"

#include "core/stead-money.h"
#include "paper/stead-build-figure.h"
#include "paper/stead-build-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define PLAN_HEIGHT 230.0
#define FAN_HEIGHT 210.0
#define PATHS 20000

SteadBuildAnswer *
stead_build_paper_read (SteadStore  *store,
                        const char  *of,
                        GError     **error)
{
  gint64 id;

  return stead_subject_build (store, of, &id, error) ? stead_build_answer_new (store, id, error) : NULL;
}

SteadBuildPath *
stead_build_paper_path (SteadStore              *store,
                        const SteadBuildAnswer  *answer,
                        GError                 **error)
{
  g_autoptr(SteadBuildPath) path = stead_build_path_new (store, answer, error);

  if (path == NULL || !stead_build_path_run (path, PATHS, NULL, error))
    return NULL;
  return g_steal_pointer (&path);
}

static char *
money (const SteadBuildAnswer *answer,
       gint64                  cents)
{
  return stead_money_format (cents, answer->farm->currency);
}

/* --- the bill --------------------------------------------------------------------------- */

static void
add_sum (SteadPages             *pages,
         const SteadBuildAnswer *answer,
         const char             *name,
         gint64                  cents,
         SteadRowLook            look)
{
  g_autofree char *text = money (answer, cents);

  stead_pages_add_row (pages, look, STEAD_PAGES_NO_KEY, (const char *[]) { name, NULL, NULL, text });
}

static void
add_bill_row (SteadPages             *pages,
              const SteadBuildAnswer *answer,
              const SteadBuildRow    *row)
{
  g_autofree char *amount = stead_build_row_amount (row, row->packs);
  g_autofree char *price = row->price_cents < 0 ? g_strdup ("–") : money (answer, row->price_cents);
  g_autofree char *cents = row->price_cents < 0 && row->paid_cents == 0 ? g_strdup ("–") : money (answer, row->given ? row->planned_cents : row->cents);
  /* Translators: in a bill, a thing that somebody gives; its name. */
  g_autofree char *given = row->given ? g_strdup_printf (_("%s (given)"), row->name) : NULL;

  stead_pages_add_row (pages, row->given ? STEAD_ROW_SOFT : STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                       (const char *[]) { given != NULL ? given : row->name, amount, price, cents });
}

static void
add_bill (SteadPages             *pages,
          const SteadBuildAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a bill", "Thing"), STEAD_ALIGN_LEFT, 1 }, { C_("column of a bill", "How many"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a bill", "Price"), STEAD_ALIGN_RIGHT, 0 }, { C_("column of a bill", "Cost"), STEAD_ALIGN_RIGHT, 0 },
  };
  int part = -1;

  stead_pages_add_heading (pages, _("What it takes"));
  for (guint i = 0; i < answer->rows->len; i++)
    {
      const SteadBuildRow *row = answer->rows->pdata[i];

      if (row->left_out)
        continue;
      if ((int) row->part != part)
        {
          stead_pages_add_subheading (pages, stead_build_part_name (row->part));
          stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
          part = (int) row->part;
        }
      add_bill_row (pages, answer, row);
    }
  stead_pages_add_subheading (pages, _("All together"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  if (answer->spent_cents > 0)
    add_sum (pages, answer, _("Paid already"), answer->spent_cents, STEAD_ROW_PLAIN);
  add_sum (pages, answer, _("To be bought"), answer->bill.bought_cents, STEAD_ROW_PLAIN);
  add_sum (pages, answer, _("Sales tax"), answer->bill.tax_cents, STEAD_ROW_PLAIN);
  add_sum (pages, answer, _("For what was forgotten or gets dearer"), answer->bill.contingency_cents, STEAD_ROW_PLAIN);
  add_sum (pages, answer, _("Money needed"), answer->goal_cents, STEAD_ROW_TOTAL);
  if (answer->bill.given_cents > 0)
    add_sum (pages, answer, _("Given besides, at its fair value"), answer->bill.given_cents, STEAD_ROW_SOFT);
  if (answer->buys->len > 0)
    stead_pages_add_text (pages, answer->bought_sentence);
}

/* --- money ------------------------------------------------------------------------------ */

static void
add_money (SteadPages             *pages,
           const SteadBuildAnswer *answer)
{
  static const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_RIGHT, 0 } };
  g_autofree char *free_money = money (answer, answer->free_cents);
  g_autofree char *spent = money (answer, answer->spent_cents);

  stead_pages_add_heading (pages, _("Who pays"));
  stead_pages_add_text (pages, answer->money_sentence);
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { _("Free money in its fund"), free_money });
  if (answer->spent_cents > 0)
    stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { _("Paid already"), spent });
  for (guint i = 0; i < answer->bounds->len; i++)
    {
      const SteadBuildBound *bound = answer->bounds->pdata[i];
      g_autofree char *cents = money (answer, bound->usable_cents);
      /* Translators: a fund, and the part of a build that its money is bound to. */
      g_autofree char *name = bound->part >= 0 ? g_strdup_printf (_("%s, bound to: %s"), bound->name,
                                                                   stead_build_part_name ((SteadBuildPart) bound->part))
                                               : g_strdup (bound->name);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { name, cents });
    }
  for (guint i = 0; i < answer->pledges->len; i++)
    {
      const SteadBuildPledge *pledge = answer->pledges->pdata[i];
      g_autofree char *cents = money (answer, pledge->cents);
      g_autofree char *day = stead_day_format (pledge->due_on, STEAD_DAY_STYLE_MEDIUM);
      /* Translators: who promised money, and when it is due. */
      g_autofree char *name = g_strdup_printf (_("Promised by %s, due %s"), pledge->who, day);

      if (pledge->cash_line_id == 0 && pledge->withdrawn_on == STEAD_DAY_NONE)
        stead_pages_add_row (pages, STEAD_ROW_SOFT, STEAD_PAGES_NO_KEY, (const char *[]) { name, cents });
    }
}

static void
add_tries (SteadPages           *pages,
           const SteadBuildPath *path)
{
  static const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_LEFT, 0 } };

  if (path->tries->len == 0)
    return;
  stead_pages_add_subheading (pages, _("What helps most"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < path->tries->len; i++)
    {
      const SteadBuildTry *try = path->tries->pdata[i];

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { try->text, try->effect });
    }
  if (path->more_sentence != NULL)
    stead_pages_add_text (pages, path->more_sentence);
}

static void
add_steps (SteadPages           *pages,
           const SteadBuildPath *path)
{
  const SteadPagesColumn columns[] = {
    { C_("column of steps", "What"), STEAD_ALIGN_LEFT, 1 }, { C_("column of steps", "Days"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of steps", "Can begin"), STEAD_ALIGN_RIGHT, 0 }, { C_("column of steps", "Begin by"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of steps", "Done by"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of steps", "Days to spare"), STEAD_ALIGN_RIGHT, 0 },
  };

  if (path->steps->len == 0)
    return;
  stead_pages_add_subheading (pages, _("What must be done by when"));
  stead_pages_add_text (pages, path->steps_sentence);
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < path->steps->len; i++)
    {
      g_auto(GStrv) cells = stead_build_step_cells (path->steps->pdata[i]);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char * const *) cells);
    }
}

static void
add_path (SteadPages     *pages,
          SteadBuildPath *path)
{
  stead_pages_add_heading (pages, _("When it is paid for"));
  stead_pages_add_text (pages, path->sentence);
  if (path->events->len > 0 && path->goal_cents > 0)
    stead_pages_add_figure (pages, FAN_HEIGHT, stead_fund_figure_print, stead_fund_figure_new (path), stead_fund_figure_free);
  if (path->next_sentence != NULL)
    stead_pages_add_text (pages, path->next_sentence);
  if (path->back_sentence != NULL)
    stead_pages_add_text (pages, path->back_sentence);
  if (path->goods_sentence != NULL)
    stead_pages_add_note (pages, path->goods_sentence);
  add_tries (pages, path);
  add_steps (pages, path);
}

/* --- animals, work, afterwards ------------------------------------------------------------ */

static void
add_room (SteadPages             *pages,
          const SteadBuildAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of room", "Room"), STEAD_ALIGN_LEFT, 1 }, { C_("column of room", "Needed"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of room", "In the plan"), STEAD_ALIGN_RIGHT, 0 },
  };

  if (answer->rooms->len == 0)
    return;
  stead_pages_add_heading (pages, _("Room for the animals"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->rooms->len; i++)
    {
      const SteadBuildRoom *room = answer->rooms->pdata[i];

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { room->what, room->need, room->has });
    }
}

static void
add_work (SteadPages             *pages,
          const SteadBuildAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of work", "Work"), STEAD_ALIGN_LEFT, 1 }, { C_("column of work", "When"), STEAD_ALIGN_LEFT, 0.8 },
    { C_("column of work", "Hours"), STEAD_ALIGN_RIGHT, 0 },
  };

  if (answer->phases->len == 0)
    return;
  stead_pages_add_heading (pages, _("The work"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->phases->len; i++)
    {
      const SteadBuildPhase *phase = answer->phases->pdata[i];
      g_autofree char *hours = stead_number_format (phase->hours, 1);
      g_autofree char *days = stead_build_phase_days (phase);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { phase->name, days, hours });
    }
}

static void
add_afterwards (SteadPages             *pages,
                const SteadBuildAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of yearly costs", "Each year"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of yearly costs", "How many"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of yearly costs", "Cost"), STEAD_ALIGN_RIGHT, 0 },
  };

  if (answer->upkeeps->len == 0)
    return;
  stead_pages_add_heading (pages, _("What it costs afterwards"));
  stead_pages_add_text (pages, answer->yearly_sentence);
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->upkeeps->len; i++)
    {
      const SteadBuildUpkeep *upkeep = answer->upkeeps->pdata[i];
      g_autofree char *amount = stead_build_upkeep_amount (answer, upkeep);
      g_autofree char *cents = money (answer, stead_build_upkeep_cents (answer, upkeep));

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { upkeep->name, amount, cents });
    }
}

static void
add_first_page (SteadPages             *pages,
                const SteadBuildAnswer *answer,
                const char             *title)
{
  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  stead_pages_add_text (pages, answer->money_sentence);
  if (answer->takeoff != NULL && answer->build->corners->len > 2)
    stead_pages_add_figure (pages, PLAN_HEIGHT, stead_plan_figure_print,
                            stead_plan_figure_new (answer->build, answer->farm->units, FALSE), stead_plan_figure_free);
  stead_pages_add_heading (pages, _("Be careful"));
  for (guint i = 0; i < answer->cautions->len; i++)
    stead_pages_add_caution (pages, answer->cautions->pdata[i]);
}

SteadPages *
stead_build_proposal_new (SteadStore               *store,
                          const char               *of,
                          const SteadPaperOptions  *options,
                          GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadBuildAnswer) answer = imprint == NULL ? NULL : stead_build_paper_read (store, of, error);
  g_autoptr(SteadBuildPath) path = answer == NULL ? NULL : stead_build_paper_path (store, answer, error);
  g_autoptr(GPtrArray) whys = NULL;
  g_autofree char *title = NULL;
  SteadPages *pages;

  if (path == NULL)
    return NULL;
  /* Translators: title of a paper; name of the build. */
  title = g_strdup_printf (_("Proposal: %s"), answer->build->name);
  pages = stead_pages_new (imprint, title, NULL);
  add_first_page (pages, answer, title);
  add_bill (pages, answer);
  add_money (pages, answer);
  add_path (pages, path);
  add_room (pages, answer);
  add_work (pages, answer);
  add_afterwards (pages, answer);
  stead_pages_add_heading (pages, _("How it is worked out"));
  whys = stead_build_answer_whys (answer);
  for (guint i = 0; i < whys->len; i++)
    stead_pages_add_why (pages, whys->pdata[i]);
  stead_pages_settle (pages);
  return pages;
}
