/* stead-check-log-paper.c - what was checked over some days: holding, thermometers, what was done. */
#include "config.h"

#include "answer/stead-check-answer.h"
#include "paper/stead-check-log-private.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>

/* Without other days: a month. */
#define USUAL_DAYS 31

static void
log_row_free (gpointer data)
{
  SteadLogRow *row = data;

  for (int i = 0; i < STEAD_LOG_CELLS; i++)
    g_free (row->cells[i]);
  g_free (row);
}

void
stead_check_log_add (SteadCheckLog      *log,
                     gint64              at,
                     const char * const *cells)
{
  SteadLogRow *row = g_new0 (SteadLogRow, 1);

  row->at = at;
  for (int i = 0; i < STEAD_LOG_CELLS; i++)
    row->cells[i] = g_strdup (cells[i]);
  g_ptr_array_add (log->rows, row);
}

static int
compare_rows (gconstpointer a,
              gconstpointer b)
{
  const SteadLogRow *one = *(const SteadLogRow * const *) a, *two = *(const SteadLogRow * const *) b;

  return (one->at > two->at) - (one->at < two->at);
}

static gboolean
log_begin (SteadCheckLog            *log,
           SteadStore               *store,
           const SteadPaperOptions  *options,
           const char               *title,
           const char               *lead,
           GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  SteadDay today = stead_store_get_today (store);
  g_autofree char *from = NULL;
  g_autofree char *to = NULL;
  g_autofree char *days = NULL;

  if (imprint == NULL)
    return FALSE;
  *log = (SteadCheckLog) { .store = store, .rows = g_ptr_array_new_with_free_func (log_row_free), .from = today - USUAL_DAYS + 1, .to = today };
  if (options != NULL && options->has_days)
    {
      log->from = options->from;
      log->to = options->to;
    }
  from = stead_day_format (log->from, STEAD_DAY_STYLE_MEDIUM);
  to = stead_day_format (log->to, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: two days. */
  days = g_strdup_printf (_("%1$s to %2$s"), from, to);
  log->pages = stead_pages_new (imprint, title, days);
  stead_pages_add_title (log->pages, title);
  stead_pages_add_lead (log->pages, lead);
  stead_pages_add_caution (log->pages, _("Your local health department decides first. Met limits do not prove that food is "
                                         "safe."));
  return TRUE;
}

/* Each line of each list of the days, oldest first. */
typedef gboolean (*LineFunc) (SteadCheckLog          *log,
                              const SteadCheckAnswer *answer,
                              const SteadCheckedLine *line);

static gboolean
each_line (SteadCheckLog  *log,
           LineFunc        func,
           GError        **error)
{
  g_autoptr(GPtrArray) heads = stead_check_repo_list (log->store, log->from, log->to, error);

  for (guint i = heads != NULL ? heads->len : 0; i > 0; i--)
    {
      const SteadCheckList *head = heads->pdata[i - 1];
      g_autoptr(SteadCheckAnswer) answer = stead_check_answer_new (log->store, head->id, error);

      if (answer == NULL)
        return FALSE;
      for (guint n = 0; n < answer->lines->len; n++)
        func (log, answer, answer->lines->pdata[n]);
    }
  return heads != NULL;
}

/* The rows, the oldest first. */
static void
log_end (SteadCheckLog *log)
{
  g_ptr_array_sort (log->rows, compare_rows);
  for (guint i = 0; i < log->rows->len; i++)
    stead_pages_add_row (log->pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                         (const char * const *) ((SteadLogRow *) log->rows->pdata[i])->cells);
  if (log->rows->len == 0)
    stead_pages_add_row (log->pages, STEAD_ROW_SOFT, STEAD_PAGES_NO_KEY,
                         (const char *[]) { _("Nothing in these days."), NULL, NULL, NULL, NULL, NULL });
}

static char *
when_text (const SteadCheckRead *read)
{
  g_autofree char *day = stead_day_format (stead_time_day (read->shown->at), STEAD_DAY_STYLE_SHORT);

  return g_strdup_printf ("%s %s", day, read->time);
}

static const char *
verdict_text (const SteadCheckRead *read)
{
  switch (read->state)
    {
    case STEAD_READ_MET: return C_("verdict", "met");
    case STEAD_READ_UNSURE: return C_("verdict", "unsure");
    case STEAD_READ_OPEN: return C_("verdict", "open");
    case STEAD_READ_CORRECTED: return C_("verdict", "corrected");
    case STEAD_READ_FAILED:
    case STEAD_READ_HANDLED:
    default: return C_("verdict", "not met");
    }
}

/* --- holding hot and cold ------------------------------------------------------------------ */

static char *
what_is_held (const SteadCheckAnswer *answer,
              const SteadCheckedLine *line)
{
  if (line->food != NULL)
    return g_strdup (line->food);
  return g_strdup (g_str_equal (line->line->topic, "eggs_cold") ? _("Raw eggs") : answer->list->name);
}

static gboolean
add_held (SteadCheckLog          *log,
          const SteadCheckAnswer *answer,
          const SteadCheckedLine *line)
{
  static const char * const topics[] = { "hold_hot", "hold_cold", "hold_frozen", "eggs_cold", "carry_hot", "carry_cold",
                                         "carry_frozen", "time_start", "time_during", "time_end", NULL };

  if (!g_strv_contains (topics, line->line->topic))
    return FALSE;
  for (guint i = 0; i < line->reads->len; i++)
    {
      const SteadCheckRead *read = line->reads->pdata[i];
      g_autofree char *when = when_text (read);
      g_autofree char *what = what_is_held (answer, line);
      g_autofree char *limit = line->limit != NULL ? g_strdup_printf ("%s\n%s", line->limit, line->source)
                                                   : g_strdup (line->source);
      g_autofree char *reading = g_strdup_printf ("%s: %s", read->value, verdict_text (read));

      stead_check_log_add (log, read->shown->at, (const char *[]) { when, what, limit, reading, read->who, read->done });
    }
  return TRUE;
}

SteadPages *
stead_hold_paper_new (SteadStore               *store,
                      const char               *of,
                      const SteadPaperOptions  *options,
                      GError                  **error)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a log of readings", "When"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a log of readings", "Food"), STEAD_ALIGN_LEFT, 0.8 },
    { C_("column of a log of readings", "Limit"), STEAD_ALIGN_LEFT, 1.4 },
    { C_("column of a log of readings", "Reading"), STEAD_ALIGN_LEFT, 0.6 },
    { C_("column of a log of readings", "Who"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a log of readings", "What was done"), STEAD_ALIGN_LEFT, 0.9 },
  };
  g_autoptr(SteadPages) pages = NULL;
  g_autoptr(GPtrArray) rows = NULL;
  SteadCheckLog log;

  if (!log_begin (&log, store, options, _("Hot and cold holding log"),
                  _("What was kept hot, cold, frozen or by the clock, and what was read of it."), error))
    return NULL;
  pages = log.pages;
  rows = log.rows;
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  if (!each_line (&log, add_held, error))
    return NULL;
  log_end (&log);
  if (!stead_check_log_add_coolers (&log, error))
    return NULL;
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

/* --- thermometers ------------------------------------------------------------------------------ */

static gboolean
add_tried (SteadCheckLog          *log,
           const SteadCheckAnswer *answer,
           const SteadCheckedLine *line)
{
  if (!g_str_equal (line->line->topic, "thermometer_ice") && !g_str_equal (line->line->topic, "thermometer_boil"))
    return FALSE;
  for (guint i = 0; i < line->reads->len; i++)
    {
      const SteadCheckRead *read = line->reads->pdata[i];
      g_autofree char *when = when_text (read);
      const char *where = g_str_equal (line->line->topic, "thermometer_ice") ? _("melting ice") : _("boiling water");

      stead_check_log_add (log, read->shown->at, (const char *[]) { when, read->tool != NULL ? read->tool : _("not said"), where,
                                                       read->value, read->who, read->sentence });
    }
  return TRUE;
}

/* Tried without a list. */
static gboolean
add_instruments (SteadCheckLog  *log,
                 GError        **error)
{
  g_autoptr(GPtrArray) instruments = stead_instrument_repo_list (log->store, TRUE, error);
  g_autoptr(SteadFarm) farm = instruments != NULL ? stead_farm_repo_get (log->store, error) : NULL;

  for (guint i = 0; farm != NULL && i < instruments->len; i++)
    {
      const SteadInstrument *instrument = instruments->pdata[i];
      g_autoptr(GPtrArray) shown = stead_shown_repo_tried (log->store, instrument->id, stead_time_midnight (log->from),
                                                           stead_time_midnight (log->to + 1), error);

      if (shown == NULL)
        return FALSE;
      for (guint n = 0; n < shown->len; n++)
        {
          const SteadShown *row = shown->pdata[n];
          g_autofree char *value = stead_check_value_text (row, NULL, farm->units);
          g_autofree char *time = stead_check_time_text (row->at);
          SteadCheckRead read = { .shown = row, .time = time };
          g_autofree char *when = when_text (&read);

          if (row->line_id != 0)
            continue;
          stead_check_log_add (log, row->at, (const char *[]) { when, instrument->name,
                                                    g_str_equal (row->kind, STEAD_SHOWN_ICE_BATH) ? _("melting ice")
                                                                                                  : _("boiling water"),
                                                    value, NULL, row->note });
        }
    }
  return farm != NULL;
}

SteadPages *
stead_thermometer_paper_new (SteadStore               *store,
                             const char               *of,
                             const SteadPaperOptions  *options,
                             GError                  **error)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a log of readings", "When"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a log of readings", "Thermometer"), STEAD_ALIGN_LEFT, 0.7 },
    { C_("column of a log of readings", "In"), STEAD_ALIGN_LEFT, 0.6 },
    { C_("column of a log of readings", "It showed"), STEAD_ALIGN_LEFT, 0.5 },
    { C_("column of a log of readings", "Who"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a log of readings", "How far off it is"), STEAD_ALIGN_LEFT, 1.6 },
  };
  g_autoptr(SteadPages) pages = NULL;
  g_autoptr(GPtrArray) rows = NULL;
  SteadCheckLog log;

  if (!log_begin (&log, store, options, _("Thermometer check log"),
                  _("What the thermometers showed in melting ice and in boiling water."), error))
    return NULL;
  pages = log.pages;
  rows = log.rows;
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  if (!each_line (&log, add_tried, error) || !add_instruments (&log, error))
    return NULL;
  log_end (&log);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

/* --- what was done --------------------------------------------------------------------------------- */

static gboolean
add_failed (SteadCheckLog          *log,
            const SteadCheckAnswer *answer,
            const SteadCheckedLine *line)
{
  for (guint i = 0; i < line->reads->len; i++)
    {
      const SteadCheckRead *read = line->reads->pdata[i];
      g_autofree char *when = NULL;
      g_autofree char *what = NULL;
      g_autofree char *done = NULL;

      if (read->state != STEAD_READ_FAILED && read->state != STEAD_READ_HANDLED)
        continue;
      when = when_text (read);
      what = line->food != NULL ? g_strdup_printf ("%s (%s)\n%s", line->text, line->food, line->source)
                                : g_strdup_printf ("%s\n%s", line->text, line->source);
      done = read->done != NULL ? g_strdup (read->done) : g_strdup (_("Nothing was written down."));
      stead_check_log_add (log, read->shown->at, (const char *[]) { when, what, read->value, read->who, done, NULL });
    }
  return TRUE;
}

static const char *
outcome_text (SteadHoldOutcome outcome)
{
  switch (outcome)
    {
    case STEAD_HOLD_MENDED: return C_("hold", "put right");
    case STEAD_HOLD_DISCARDED: return C_("hold", "thrown away");
    case STEAD_HOLD_MISTAKEN: return C_("hold", "a slip");
    case STEAD_HOLD_OPEN:
    default: return C_("hold", "still held");
    }
}

static gboolean
add_holds (SteadCheckLog  *log,
           GError        **error)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a log of readings", "Since"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a log of readings", "Held back"), STEAD_ALIGN_LEFT, 0.8 },
    { C_("column of a log of readings", "Why"), STEAD_ALIGN_LEFT, 1.2 },
    { C_("column of a log of readings", "What became of it"), STEAD_ALIGN_LEFT, 1.2 },
  };
  g_autoptr(GPtrArray) holds = stead_hold_repo_of_days (log->store, log->from, log->to, error);

  if (holds == NULL || holds->len == 0)
    return holds != NULL;
  stead_pages_add_heading (log->pages, _("What was held back"));
  stead_pages_add_table (log->pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < holds->len; i++)
    {
      const SteadHold *hold = holds->pdata[i];
      g_autofree char *since = stead_day_format (stead_time_day (hold->since_at), STEAD_DAY_STYLE_SHORT);
      g_autofree char *end = hold->note != NULL ? g_strdup_printf ("%s: %s", outcome_text (hold->outcome), hold->note)
                                                : g_strdup (outcome_text (hold->outcome));

      stead_pages_add_row (log->pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { since, hold->what, hold->reason, end });
    }
  return TRUE;
}

SteadPages *
stead_corrective_paper_new (SteadStore               *store,
                            const char               *of,
                            const SteadPaperOptions  *options,
                            GError                  **error)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a log of readings", "When"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a log of readings", "What was not met"), STEAD_ALIGN_LEFT, 1.6 },
    { C_("column of a log of readings", "Reading"), STEAD_ALIGN_LEFT, 0.6 },
    { C_("column of a log of readings", "Who"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a log of readings", "What was done"), STEAD_ALIGN_LEFT, 1.2 },
  };
  g_autoptr(SteadPages) pages = NULL;
  g_autoptr(GPtrArray) rows = NULL;
  SteadCheckLog log;

  if (!log_begin (&log, store, options, _("Corrective-action record"),
                  _("Each reading that did not meet its limit, and what was done about it."), error))
    return NULL;
  pages = log.pages;
  rows = log.rows;
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  if (!each_line (&log, add_failed, error) || !stead_check_log_add_warm (&log, error))
    return NULL;
  log_end (&log);
  if (!add_holds (&log, error))
    return NULL;
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
