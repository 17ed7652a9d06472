/* stead-instruments-answer.c - thermometers, and what they showed in ice and in boiling water. */
#include "config.h"

#include "answer/stead-instruments-answer.h"

#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define BACK_DAYS 400   /* a school year and the summer after it */
#define MOST_TRIES 3    /* that are told of each */

static const char * const kind_names[] = {
  [STEAD_INSTRUMENT_PROBE] = N_("Probe thermometer"),
  [STEAD_INSTRUMENT_INFRARED] = N_("Infrared thermometer"),
  [STEAD_INSTRUMENT_AIR] = N_("Air thermometer"),
  [STEAD_INSTRUMENT_PH_METER] = N_("pH meter"),
  [STEAD_INSTRUMENT_STRIP] = N_("Test strips"),
  [STEAD_INSTRUMENT_LOGGER] = N_("Logger"),
};

const char *
stead_instrument_kind_name (SteadInstrumentKind kind)
{
  g_return_val_if_fail ((gsize) kind < G_N_ELEMENTS (kind_names), "");
  return _(kind_names[kind]);
}

static void
try_free (gpointer data)
{
  SteadInstrumentTry *one = data;

  g_free (one->text);
  g_free (one);
}

static void
said_free (gpointer data)
{
  SteadInstrumentSaid *said = data;

  stead_instrument_free (said->instrument);
  g_free (said->name);
  g_clear_pointer (&said->shown, g_ptr_array_unref);
  g_clear_pointer (&said->tries, g_ptr_array_unref);
  g_free (said->untried);
  g_free (said);
}

void
stead_instruments_answer_free (SteadInstrumentsAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->table, stead_limit_table_free);
  g_clear_pointer (&self->instruments, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self);
}

/* --- judging --------------------------------------------------------------------------- */

/* What it must show, and how far off it may be. */
static GPtrArray *
rows_of (const SteadLimitTable *table,
         gboolean               ice,
         const char            *scale)
{
  const SteadLimitFact facts[] = { { "scale", scale, 0 }, { NULL, NULL, 0 } };
  const SteadLimit *most = stead_limit_table_find (table, "thermometer", "food", "error", facts, NULL);
  const SteadLimit *point = stead_limit_table_by_id (table, ice ? "thermometer-ice-32" : "boiling-sea-212");
  GPtrArray *rows = g_ptr_array_new ();

  if (point != NULL)
    g_ptr_array_add (rows, (gpointer) point);
  if (most != NULL)
    g_ptr_array_add (rows, (gpointer) most);
  return rows;
}

/* As the line of a checklist about it would be judged. */
static SteadCheckVerdict *
verdict_of (const SteadInstrumentsAnswer *self,
            const SteadInstrument        *instrument,
            const SteadShown             *shown,
            GError                      **error)
{
  gboolean ice = g_str_equal (shown->kind, STEAD_SHOWN_ICE_BATH);
  const char *scale = instrument->scale != NULL ? instrument->scale : "dual";
  g_autoptr(GPtrArray) rows = rows_of (self->table, ice, scale);
  const SteadCheckPlanAnswer plan = { .farm = self->farm, .table = self->table };
  const SteadCheckLine line = {
    .kind = ice ? STEAD_CHECK_LINE_THERMOMETER_ICE : STEAD_CHECK_LINE_THERMOMETER_BOIL,
    .food = -1, .subject = scale, .measure = shown->kind, .unit = "F", .rows = rows, .all = TRUE,
  };
  const SteadCheckReading reading = {
    .shown = { .value = stead_fahrenheit_from_celsius (shown->value), .unit = "F", .time_s = NAN },
    .at = shown->at, .now = shown->at, .began = STEAD_CHECK_NO_TIME, .elapsed_h = NAN, .since_good_h = NAN,
    .confirmed = TRUE, .elevation_ft = self->farm->elevation_m / STEAD_FOOT_M,
  };

  return stead_check_verdict_new (&plan, &line, &reading, error);
}

static SteadInstrumentTry *
try_new (const SteadInstrumentsAnswer *self,
         const SteadInstrument        *instrument,
         const SteadShown             *shown,
         GError                      **error)
{
  g_autoptr(SteadCheckVerdict) verdict = shown->corrected ? NULL : verdict_of (self, instrument, shown, error);
  g_autofree char *value = stead_check_value_text (shown, "F", self->farm->units);
  g_autofree char *day = stead_day_format (stead_time_day (shown->at), STEAD_DAY_STYLE_MEDIUM);
  const char *bath = g_str_equal (shown->kind, STEAD_SHOWN_ICE_BATH) ? _("in melting ice") : _("in boiling water");
  SteadInstrumentTry *one;
  g_autofree char *means = NULL;

  if (verdict == NULL && !shown->corrected)
    return NULL;
  one = g_new0 (SteadInstrumentTry, 1);
  one->shown = shown;
  one->off_f = verdict != NULL ? verdict->judged.error_f : NAN;
  one->bad = verdict != NULL && verdict->judged.outcome == STEAD_CHECK_NOT_MET;
  means = verdict == NULL ? g_strdup (_("It was a slip, and corrected."))
          : one->bad && verdict->correction != NULL ? g_strdup_printf ("%s %s", verdict->sentence, verdict->correction)
          : g_strdup (verdict->sentence);
  /* Translators: a day, a temperature, "in melting ice", what that means. */
  one->text = g_strdup_printf (_("%s: %s %s. %s"), day, value, bath, means);
  return one;
}

/* --- the answer -------------------------------------------------------------------------- */

static gboolean
add_tries (const SteadInstrumentsAnswer *self,
           SteadInstrumentSaid          *said,
           GError                      **error)
{
  for (guint i = said->shown->len > MOST_TRIES ? said->shown->len - MOST_TRIES : 0; i < said->shown->len; i++)
    {
      SteadInstrumentTry *one = try_new (self, said->instrument, said->shown->pdata[i], error);

      if (one == NULL)
        return FALSE;
      g_ptr_array_add (said->tries, one);
      if (!one->shown->corrected)
        said->bad = one->bad;
    }
  return TRUE;
}

static SteadInstrumentSaid *
said_new (const SteadInstrumentsAnswer *self,
          SteadStore                   *store,
          SteadInstrument              *instrument,
          GError                      **error)
{
  SteadInstrumentSaid *said = g_new0 (SteadInstrumentSaid, 1);
  const char *kind = stead_instrument_kind_name (instrument->kind);
  SteadDay today = stead_store_get_today (store);

  said->instrument = instrument;
  said->tried = instrument->kind != STEAD_INSTRUMENT_PH_METER && instrument->kind != STEAD_INSTRUMENT_STRIP;
  said->tries = g_ptr_array_new_with_free_func (try_free);
  /* Translators: the name of an instrument, what kind it is. */
  said->name = g_strcmp0 (instrument->name, kind) == 0 ? g_strdup (instrument->name)
               : g_strdup_printf (C_("instrument", "%s, %s"), instrument->name, kind);
  said->shown = stead_shown_repo_tried (store, instrument->id, stead_time_midnight (today - BACK_DAYS),
                                        stead_time_midnight (today + 1), error);
  if (said->shown == NULL || !add_tries (self, said, error))
    {
      said_free (said);
      return NULL;
    }
  if (said->shown->len == 0 && instrument->kind == STEAD_INSTRUMENT_PROBE)
    said->untried = g_strdup (_("It was not tried yet."));
  return said;
}

static char *
sentence_of (const SteadInstrumentsAnswer *self)
{
  if (self->instruments->len == 0)
    return g_strdup (_("None yet. A checklist asks for a thin probe, and that it was tried before the work."));
  if (self->n_bad == 0)
    return NULL;
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u thermometer was further off than it may be.",
                                       "%u thermometers were further off than they may be.", self->n_bad), self->n_bad);
}

SteadInstrumentsAnswer *
stead_instruments_answer_new (SteadStore  *store,
                              GError     **error)
{
  g_autoptr(SteadInstrumentsAnswer) self = g_new0 (SteadInstrumentsAnswer, 1);
  g_autoptr(GPtrArray) instruments = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->instruments = g_ptr_array_new_with_free_func (said_free);
  self->farm = stead_farm_repo_get (store, error);
  self->table = self->farm != NULL ? stead_check_table_on (store, stead_store_get_today (store), error) : NULL;
  instruments = self->table != NULL ? stead_instrument_repo_list (store, FALSE, error) : NULL;
  if (instruments == NULL)
    return NULL;
  while (instruments->len > 0)
    {
      SteadInstrumentSaid *said = said_new (self, store, g_ptr_array_steal_index (instruments, 0), error);

      if (said == NULL)
        return NULL;
      g_ptr_array_add (self->instruments, said);
      self->n_bad += said->bad ? 1 : 0;
    }
  self->sentence = sentence_of (self);
  return g_steal_pointer (&self);
}
