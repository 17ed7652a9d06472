/* stead-statement-paper.c - the statements, the cash book, and the sheet for counting money. */
#include "config.h"

#include "answer/stead-cash-answer.h"
#include "answer/stead-cash-rules.h"
#include "answer/stead-cash-words.h"
#include "answer/stead-log-answer.h"
#include "answer/stead-log-cash.h"
#include "answer/stead-statement-answer.h"
#include "answer/stead-subject.h"
#include "core/stead-money.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>

/* --- what they share -------------------------------------------------------------------- */

/* The days of a paper of money: the school year up to today, or what was asked for. */
static gboolean
read_days (SteadStore               *store,
           const SteadPaperOptions  *options,
           SteadDay                 *from,
           SteadDay                 *to,
           GError                  **error)
{
  if (options != NULL && options->has_days)
    {
      *from = options->from;
      *to = options->to;
      return TRUE;
    }
  *to = stead_store_get_today (store);
  return stead_cash_period_start (store, options == NULL ? STEAD_PERIOD_SCHOOL_YEAR : options->period, from, error);
}

static char *
period_text (SteadDay from,
             SteadDay to)
{
  g_autofree char *first = stead_day_format (from, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *last = stead_day_format (to, STEAD_DAY_STYLE_MEDIUM);

  /* Translators: the first and the last day of a period. */
  return g_strdup_printf (_("%s to %s"), first, last);
}

/* --- statements --------------------------------------------------------------------------- */

static void
add_line (SteadPages                 *pages,
          const SteadStatementAnswer *answer,
          const SteadStatementLine   *line)
{
  const char *currency = answer->farm->currency;
  g_autofree char *before = stead_money_format (line->before_cents, currency);
  g_autofree char *cents = stead_money_format (line->cents, currency);
  SteadRowLook look = line->is_total ? STEAD_ROW_TOTAL : line->is_apart ? STEAD_ROW_SOFT : STEAD_ROW_PLAIN;
  const char *flow[] = { line->label, cents };
  const char *stand[] = { line->label, before, cents };

  stead_pages_add_row (pages, look, STEAD_PAGES_NO_KEY, line->part == STEAD_STATEMENT_BALANCE ? stand : flow);
}

static void
add_part (SteadPages                 *pages,
          const SteadStatementAnswer *answer,
          SteadStatementPart          part)
{
  g_autofree char *before = stead_day_format (answer->from - 1, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *end = stead_day_format (answer->to, STEAD_DAY_STYLE_MEDIUM);
  const SteadPagesColumn flow[] = {
    { NULL, STEAD_ALIGN_LEFT, 1 },
    { NULL, STEAD_ALIGN_RIGHT, 0 },
  };
  const SteadPagesColumn stand[] = {
    { C_("column of a statement", "What"), STEAD_ALIGN_LEFT, 1 },
    { before, STEAD_ALIGN_RIGHT, 0 },
    { end, STEAD_ALIGN_RIGHT, 0 },
  };
  gboolean began = FALSE;

  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadStatementLine *line = answer->lines->pdata[i];

      if (line->part != part)
        continue;
      if (!began)
        {
          stead_pages_add_heading (pages, stead_statement_part_title (part));
          if (part == STEAD_STATEMENT_BALANCE)
            stead_pages_add_table (pages, stand, G_N_ELEMENTS (stand));
          else
            stead_pages_add_table (pages, flow, G_N_ELEMENTS (flow));
          began = TRUE;
        }
      add_line (pages, answer, line);
    }
}

/* How the figures come about, so that a bookkeeper can judge them. */
static void
add_rules (SteadPages *pages)
{
  stead_pages_add_heading (pages, _("How it is reckoned"));
  stead_pages_add_note (pages, _("Money out and costs have a minus sign. Stock counts at what it cost. What grows counts "
                                 "at what went in and no harvest has carried off; what is left when a batch ends is a "
                                 "cost of that day."));
  stead_pages_add_note (pages, _("Hens lose an equal part of their price with each egg that is expected of them; their "
                                 "feed is a cost of the day it is fed. Things that last lose worth by days or by use."));
  stead_pages_add_note (pages, _("A receipt is owed from its day until lines of the cash book pay it. Gifts in kind count "
                                 "at fair value and are in no income. Unpaid student work is not in it."));
}

static SteadStatementAnswer *
read_statement (SteadStore               *store,
                const char               *of,
                const SteadPaperOptions  *options,
                GError                  **error)
{
  gint64 enterprise = 0;
  SteadDay from, to;

  if ((of != NULL && !stead_subject_enterprise (store, of, &enterprise, error))
      || !read_days (store, options, &from, &to, error))
    return NULL;
  return stead_statement_answer_new (store, from, to, enterprise, error);
}

SteadPages *
stead_statement_paper_new (SteadStore               *store,
                           const char               *of,
                           const SteadPaperOptions  *options,
                           GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadStatementAnswer) answer = imprint != NULL ? read_statement (store, of, options, error) : NULL;
  g_autofree char *period = NULL;
  g_autofree char *title = NULL;
  g_autoptr(SteadPages) pages = NULL;

  if (answer == NULL)
    return NULL;
  period = period_text (answer->from, answer->to);
  title = answer->enterprise_name != NULL
          /* Translators: title of a document; %s is a part of the farm: "Eggs". */
          ? g_strdup_printf (_("Statements of %s"), answer->enterprise_name) : g_strdup (_("Statements"));
  pages = stead_pages_new (imprint, title, period);
  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->caution != NULL)
    stead_pages_add_caution (pages, answer->caution);
  for (int part = 0; part < STEAD_N_STATEMENT_PARTS; part++)
    add_part (pages, answer, (SteadStatementPart) part);
  add_rules (pages);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

SteadLogAnswer *
stead_statement_paper_log (SteadStore               *store,
                           const char               *of,
                           const SteadPaperOptions  *options,
                           GError                  **error)
{
  g_autoptr(SteadStatementAnswer) answer = read_statement (store, of, options, error);

  return answer != NULL ? stead_log_answer_statement (store, answer, error) : NULL;
}

/* --- cash book ------------------------------------------------------------------------------- */

static const char *
account_name (const SteadCashAnswer *answer,
              gint64                 id)
{
  for (guint i = 0; i < answer->accounts->len; i++)
    {
      const SteadAccountState *state = answer->accounts->pdata[i];

      if (state->account->id == id)
        return state->account->name;
    }
  return NULL;
}

static void
add_accounts (SteadPages            *pages,
              const SteadCashAnswer *answer)
{
  static const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_RIGHT, 0 } };
  g_autofree char *total = stead_money_format (answer->total_cents, answer->farm->currency);

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->accounts->len; i++)
    {
      const SteadAccountState *state = answer->accounts->pdata[i];
      g_autofree char *cents = stead_money_format (state->cents, answer->farm->currency);

      if (state->account->closed_on == STEAD_DAY_NONE || state->cents != 0)
        stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                             (const char *[]) { state->account->name, cents });
    }
  stead_pages_add_row (pages, STEAD_ROW_TOTAL, STEAD_PAGES_NO_KEY,
                       (const char *[]) { C_("last line of a table", "Together"), total });
  for (guint i = 0; i < answer->funds->len; i++)
    {
      const SteadFundState *state = answer->funds->pdata[i];
      g_autofree char *cents = stead_money_format (state->cents, answer->farm->currency);
      /* Translators: %s is the name of a fund. */
      g_autofree char *label = g_strdup_printf (_("Of it for one purpose only: %s"), state->fund->name);

      stead_pages_add_row (pages, STEAD_ROW_SOFT, STEAD_PAGES_NO_KEY, (const char *[]) { label, cents });
    }
}

/* "Sales, Market; corrects line 12"; of money that was moved the account at the other end. */
static char *
what_of (const SteadCashAnswer *answer,
         const SteadCashLine   *line)
{
  g_autoptr(GString) text = g_string_new (stead_cash_words_category (line->category));
  const char *more = line->who != NULL ? line->who : line->note;

  if (line->pair_id != 0 && line->pair_account_id != line->account_id)
    more = account_name (answer, line->pair_account_id);

  if (more != NULL)
    {
      g_string_append (text, C_("between items of a list", ", "));
      g_string_append (text, more);
    }
  if (line->corrects_id != 0)
    {
      /* Translators: goes after what a line of the cash book is; a number. */
      g_autofree char *corrects = g_strdup_printf (_("; corrects line %d"), (int) line->corrects_id);

      g_string_append (text, corrects);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
add_book (SteadPages            *pages,
          const SteadCashAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of the cash book", "Date"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of the cash book", "Line"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of the cash book", "What"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of the cash book", "Account"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of the cash book", "Amount"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of the cash book", "Balance"), STEAD_ALIGN_RIGHT, 0 },
  };

  stead_pages_add_heading (pages, _("Lines of the cash book"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadCashLine *line = answer->lines->pdata[i];
      g_autofree char *day = stead_day_format (line->day, STEAD_DAY_STYLE_MEDIUM);
      g_autofree char *number = g_strdup_printf ("%" G_GINT64_FORMAT, line->id);
      g_autofree char *what = what_of (answer, line);
      g_autofree char *cents = stead_money_format (line->cents, answer->farm->currency);
      g_autofree char *balance = stead_money_format (line->balance_cents, answer->farm->currency);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { day, number, what, account_name (answer, line->account_id), cents,
                                              balance });
    }
}

/* Which of them holds, if any, is for the school to say. */
static void
add_cash_rules (SteadPages *pages)
{
  static const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 3 }, { NULL, STEAD_ALIGN_LEFT, 2 } };
  g_autoptr(GPtrArray) rules = stead_cash_rules_list ();

  stead_pages_add_heading (pages, _("What written rules ask, as examples"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < rules->len; i++)
    {
      const SteadCashRule *rule = rules->pdata[i];

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { rule->text, rule->source });
    }
}

SteadPages *
stead_cash_paper_new (SteadStore               *store,
                      const char               *of,
                      const SteadPaperOptions  *options,
                      GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadCashAnswer) answer = NULL;
  g_autofree char *period = NULL;
  g_autoptr(SteadPages) pages = NULL;
  gint64 account = 0;
  SteadDay from, to;

  if (imprint == NULL || (of != NULL && !stead_subject_account (store, of, &account, error))
      || !read_days (store, options, &from, &to, error)
      || (answer = stead_cash_answer_new (store, from, to, account, error)) == NULL)
    return NULL;
  period = period_text (from, to);
  pages = stead_pages_new (imprint, _("Cash book"), period);
  stead_pages_add_title (pages, _("Cash book"));
  stead_pages_add_lead (pages, answer->sentence);
  add_accounts (pages, answer);
  stead_pages_add_caution (pages, answer->caution);
  if (answer->lines->len > 0)
    add_book (pages, answer);
  add_cash_rules (pages);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

SteadLogAnswer *
stead_cash_paper_log (SteadStore               *store,
                      const char               *of,
                      const SteadPaperOptions  *options,
                      GError                  **error)
{
  gint64 account = 0;

  if (of != NULL && !stead_subject_account (store, of, &account, error))
    return NULL;
  return stead_log_answer_cash (store, account, STEAD_DAY_NONE, STEAD_DAY_NONE, error);
}

/* --- the sheet for counting -------------------------------------------------------------------- */

/* Room to write by hand. */
#define BLANK "____________"

static void
add_faces (SteadPages      *pages,
           const SteadFarm *farm)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a count", "Coin or note"), STEAD_ALIGN_RIGHT, 1 },
    { C_("column of a count", "How many, first person"), STEAD_ALIGN_RIGHT, 1 },
    { C_("column of a count", "How many, second person"), STEAD_ALIGN_RIGHT, 1 },
    { C_("column of a count", "Amount"), STEAD_ALIGN_RIGHT, 1 },
  };
  gsize n;
  const gint64 *faces = stead_cash_faces (farm->currency, &n);

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *face = stead_money_format (faces[i], farm->currency);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { face, BLANK, BLANK, BLANK });
    }
  stead_pages_add_row (pages, STEAD_ROW_TOTAL, STEAD_PAGES_NO_KEY,
                       (const char *[]) { C_("last line of a table", "Together"), NULL, NULL, BLANK });
}

static void
add_sums (SteadPages *pages)
{
  static const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_RIGHT, 0 } };
  const char * const labels[] = {
    _("Checks, each on its own line on the back"),
    _("All that was counted"),
    _("What stays in the box for change"),
    _("To deposit: counted less what stays"),
    _("Sales by the tally or the slips, less what was paid out with a signed slip"),
    _("Over or short: to deposit less those sales"),
  };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < G_N_ELEMENTS (labels); i++)
    stead_pages_add_row (pages, i == 3 ? STEAD_ROW_TOTAL : STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                         (const char *[]) { labels[i], BLANK });
}

static void
add_signs (SteadPages *pages)
{
  static const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_LEFT, 2 } };
  const char * const labels[] = {
    _("Where and what for"), _("Day and time"), _("Reason of a difference"), _("First person, name and signature"),
    _("Second person, name and signature"), _("Number of the deposit slip"),
    _("Brought by, day and time"), _("Received for the school by"),
  };

  stead_pages_add_heading (pages, _("Signed together"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < G_N_ELEMENTS (labels); i++)
    stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                         (const char *[]) { labels[i], BLANK BLANK BLANK });
}

SteadPages *
stead_count_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadFarm) farm = imprint != NULL ? stead_farm_repo_get (store, error) : NULL;
  g_autoptr(SteadPages) pages = NULL;

  if (farm == NULL)
    return NULL;
  pages = stead_pages_new (imprint, _("Count and deposit"), NULL);
  stead_pages_add_title (pages, _("Count and deposit"));
  stead_pages_add_lead (pages, _("Two people count together, each for themselves, and sign. Deposit exactly what is "
                                 "there: never add from a pocket, never hide what is over."));
  add_faces (pages, farm);
  add_sums (pages);
  stead_pages_add_caution (pages, stead_cash_words_caution ());
  add_signs (pages);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
