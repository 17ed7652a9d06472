/* stead-instruments-pane.c - thermometers and meters, and what they showed when they were tried.
 *
 * A probe is tried in melting ice and in boiling water; how far it may be off is a row
 * of the tables.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-instruments-pane.h"

#include "answer/stead-check-answer.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

#define BACK_DAYS 400

struct _SteadInstrumentsPane
{
  GtkWidget   parent_instance;

  SteadDesk  *desk;

  GtkWidget  *rows;
  SteadPick  *which, *bath, *kind, *scale;
  SteadField *shown, *name, *step, *error;
  GtkLabel   *trouble;
  GtkWidget  *try_card;
};

G_DEFINE_FINAL_TYPE (SteadInstrumentsPane, stead_instruments_pane, GTK_TYPE_WIDGET)

enum { ICE = 1, BOIL };

static const char * const kind_names[] = {
  [STEAD_INSTRUMENT_PROBE] = N_("Probe thermometer"),
  [STEAD_INSTRUMENT_INFRARED] = N_("Infrared thermometer"),
  [STEAD_INSTRUMENT_AIR] = N_("Air thermometer"),
  [STEAD_INSTRUMENT_PH_METER] = N_("pH meter"),
  [STEAD_INSTRUMENT_STRIP] = N_("Test strips"),
  [STEAD_INSTRUMENT_LOGGER] = N_("Logger"),
};

static const char * const scales[] = { "dual", "F_only", "C_only" };

/* --- judging ------------------------------------------------------------------------------ */

/* What it showed in ice or in boiling water, in words; (transfer full) (nullable). */
static char *
verdict_of (SteadInstrumentsPane  *self,
            const SteadInstrument *instrument,
            const SteadShown      *shown,
            gboolean              *out_bad)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  const SteadFarm *farm = stead_desk_get_farm (self->desk);
  gboolean ice = g_str_equal (shown->kind, STEAD_SHOWN_ICE_BATH);
  const char *scale = instrument->scale != NULL ? instrument->scale : "dual";
  const SteadLimitFact facts[] = { { "scale", scale, 0 }, { NULL, NULL, 0 } };
  g_autoptr(SteadLimitTable) table = stead_check_table_on (store, stead_store_get_today (store), NULL);
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  g_autoptr(SteadCheckVerdict) verdict = NULL;
  SteadCheckPlanAnswer plan = { .farm = (SteadFarm *) farm, .table = table };
  SteadCheckLine line = { .kind = ice ? STEAD_CHECK_LINE_THERMOMETER_ICE : STEAD_CHECK_LINE_THERMOMETER_BOIL,
                          .food = -1, .subject = scale, .measure = shown->kind, .unit = "F", .rows = rows, .all = TRUE };
  SteadCheckReading reading = { .shown = { .value = stead_fahrenheit_from_celsius (shown->value), .unit = "F", .time_s = NAN },
                                .at = shown->at, .now = shown->at, .began = STEAD_CHECK_NO_TIME, .elapsed_h = NAN,
                                .since_good_h = NAN, .confirmed = TRUE,
                                .elevation_ft = isnan (farm->elevation_m) ? 0 : farm->elevation_m / 0.3048 };
  const SteadLimit *most;

  if (table == NULL)
    return NULL;
  g_ptr_array_add (rows, (gpointer) stead_limit_table_by_id (table, ice ? "thermometer-ice-32" : "boiling-sea-212"));
  most = stead_limit_table_find (table, "thermometer", "food", "error", facts, NULL);
  if (most != NULL)
    g_ptr_array_add (rows, (gpointer) most);
  verdict = stead_check_verdict_new (&plan, &line, &reading, NULL);
  if (verdict == NULL)
    return NULL;
  *out_bad = verdict->judged.outcome == STEAD_CHECK_NOT_MET;
  return *out_bad && verdict->correction != NULL ? g_strdup_printf ("%s %s", verdict->sentence, verdict->correction)
                                                 : g_strdup (verdict->sentence);
}

/* --- writing down ------------------------------------------------------------------------------ */

static gboolean
shown_act (SteadStore *store,
           gpointer    data,
           GError    **error)
{
  return stead_shown_repo_add (store, data, error);
}

static gboolean
instrument_act (SteadStore *store,
                gpointer    data,
                GError    **error)
{
  return stead_instrument_repo_save (store, data, error);
}

static void
try_cb (SteadInstrumentsPane *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  SteadShown shown = { .at = stead_time_now (store), .instrument_id = stead_pick_get (self->which), .held_s = NAN,
                       .kind = (char *) (stead_pick_get (self->bath) == ICE ? STEAD_SHOWN_ICE_BATH : STEAD_SHOWN_BOILING_WATER) };
  const SteadUnit *unit = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;

  if (!stead_quantity_parse (stead_field_get_text (self->shown), STEAD_DIMENSION_TEMPERATURE,
                             stead_unit_default (STEAD_DIMENSION_TEMPERATURE, stead_desk_get_farm (self->desk)->units),
                             &shown.value, &unit, &error))
    {
      stead_field_set_error (self->shown, error->message);
      return;
    }
  shown.scale = g_str_equal (unit->id, "degC") ? 'C' : 'F';
  /* Translators: a step that can be undone; the name of a thermometer follows. */
  step = g_strdup_printf (_("trying “%s”"), stead_pick_get_text (self->which));
  if (!stead_desk_act (self->desk, step, shown_act, &shown, &error))
    {
      stead_field_set_error (self->shown, error->message);
      return;
    }
  stead_field_set_text (self->shown, "");
}

static void
add_cb (SteadInstrumentsPane *self)
{
  SteadInstrument instrument = { .kind = (SteadInstrumentKind) (stead_pick_get (self->kind) - 1),
                                 .scale = (char *) scales[stead_pick_get (self->scale) - 1],
                                 .step = NAN, .error = NAN, .retired_on = STEAD_DAY_NONE };
  gboolean warmth = instrument.kind != STEAD_INSTRUMENT_PH_METER && instrument.kind != STEAD_INSTRUMENT_STRIP;
  double factor = warmth && stead_desk_get_farm (self->desk)->units == STEAD_UNITS_US ? 1 / 1.8 : 1;
  g_autofree char *name = g_strdup (stead_field_get_text (self->name)), *step = NULL;
  g_autoptr(GError) error = NULL;

  if (stead_field_is_empty (self->name))
    {
      stead_field_set_error (self->name, _("Give it a name, for example “Probe 1”."));
      return;
    }
  if (!stead_field_read_number (self->step, NAN, &instrument.step)
      || !stead_field_read_number (self->error, NAN, &instrument.error))
    return;
  instrument.name = name;
  instrument.step *= factor;
  instrument.error *= factor;
  if (!warmth)
    instrument.scale = NULL;
  /* Translators: a step that can be undone; the name of a thermometer follows. */
  step = g_strdup_printf (_("the instrument “%s”"), name);
  if (!stead_desk_act (self->desk, step, instrument_act, &instrument, &error))
    {
      stead_field_set_error (self->name, error->message);
      return;
    }
  stead_field_set_text (self->name, "");
  stead_field_set_text (self->step, "");
  stead_field_set_text (self->error, "");
}

/* --- showing --------------------------------------------------------------------------------------- */

static void
add_tries (SteadInstrumentsPane  *self,
           GtkWidget             *box,
           const SteadInstrument *instrument,
           GPtrArray             *tried)
{
  const guint first = tried->len > 3 ? tried->len - 3 : 0;

  for (guint i = first; i < tried->len; i++)
    {
      const SteadShown *shown = tried->pdata[i];
      gboolean bad = FALSE;
      g_autofree char *verdict = shown->corrected ? NULL : verdict_of (self, instrument, shown, &bad);
      g_autofree char *value = stead_check_value_text (shown, "F", stead_desk_get_farm (self->desk)->units);
      g_autofree char *day = stead_day_format (stead_time_day (shown->at), STEAD_DAY_STYLE_MEDIUM);
      const char *bath = g_str_equal (shown->kind, STEAD_SHOWN_ICE_BATH) ? _("in melting ice") : _("in boiling water");
      /* Translators: a day, a temperature, "in melting ice", what that means. */
      g_autofree char *text = g_strdup_printf (_("%s: %s %s. %s"), day, value, bath, verdict != NULL ? verdict : "");

      gtk_box_append (GTK_BOX (box), stead_make_label (text, shown->corrected ? "done" : bad ? "warn" : NULL));
    }
  if (tried->len == 0 && instrument->kind == STEAD_INSTRUMENT_PROBE)
    gtk_box_append (GTK_BOX (box), stead_make_label (_("It was not tried yet."), "soft"));
}

static void
add_instrument (SteadInstrumentsPane  *self,
                const SteadInstrument *instrument)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  SteadDay today = stead_store_get_today (store);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autoptr(GPtrArray) tried = stead_shown_repo_tried (store, instrument->id, stead_time_midnight (today - BACK_DAYS),
                                                       stead_time_midnight (today + 1), NULL);
  /* Translators: the name of an instrument, what kind it is. */
  g_autofree char *text = g_strcmp0 (instrument->name, _(kind_names[instrument->kind])) == 0 ? g_strdup (instrument->name)
    : g_strdup_printf (C_("instrument", "%s, %s"), instrument->name, _(kind_names[instrument->kind]));

  gtk_box_append (GTK_BOX (box), stead_make_label (text, "strong"));
  if (tried != NULL)
    add_tries (self, box, instrument, tried);
  gtk_box_append (GTK_BOX (self->rows), box);
}

void
stead_instruments_pane_refresh (SteadInstrumentsPane *self,
                                SteadDesk            *desk)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) instruments = stead_instrument_repo_list (stead_desk_get_store (desk), FALSE, &error);
  gint64 chosen = stead_pick_get (self->which);

  g_return_if_fail (STEAD_IS_INSTRUMENTS_PANE (self));

  g_set_object (&self->desk, desk);
  stead_make_clear (self->rows);
  stead_pick_clear (self->which);
  stead_make_say (self->trouble, error != NULL ? error->message : instruments->len == 0
                  ? _("None yet. A checklist asks for a thin probe, and that it was tried before the work.") : NULL, FALSE);
  for (guint i = 0; instruments != NULL && i < instruments->len; i++)
    {
      const SteadInstrument *instrument = instruments->pdata[i];

      add_instrument (self, instrument);
      if (instrument->kind != STEAD_INSTRUMENT_PH_METER && instrument->kind != STEAD_INSTRUMENT_STRIP)
        stead_pick_append (self->which, instrument->id, instrument->name);
    }
  stead_pick_show (self->which, chosen);
  gtk_widget_set_visible (self->try_card, stead_pick_count (self->which) > 0);
}

/* --- the object ---------------------------------------------------------------------------------- */

static void
stead_instruments_pane_dispose (GObject *object)
{
  SteadInstrumentsPane *self = STEAD_INSTRUMENTS_PANE (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_instruments_pane_parent_class)->dispose (object);
}

static void
stead_instruments_pane_class_init (SteadInstrumentsPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_instruments_pane_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
add_card (GtkWidget  *box,
          const char *head)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);

  gtk_widget_add_css_class (card, "card");
  gtk_box_append (GTK_BOX (card), stead_make_label (head, "heading"));
  gtk_box_append (GTK_BOX (box), card);
  return card;
}

static void
add_save (SteadInstrumentsPane *self,
          GtkWidget            *card,
          const char           *label,
          GCallback             clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (card), button);
}

static void
make_try (SteadInstrumentsPane *self,
          GtkWidget            *box)
{
  self->try_card = add_card (box, _("Try a thermometer"));
  self->which = STEAD_PICK (stead_pick_new (_("Which one")));
  self->bath = STEAD_PICK (stead_pick_new (_("In what")));
  stead_pick_append (self->bath, ICE, _("Melting ice"));
  stead_pick_append (self->bath, BOIL, _("Boiling water"));
  stead_pick_show (self->bath, ICE);
  self->shown = STEAD_FIELD (stead_field_new (_("What it shows"), STEAD_FIELD_TEXT));
  g_signal_connect_swapped (self->shown, "activate", G_CALLBACK (try_cb), self);
  gtk_box_append (GTK_BOX (self->try_card), GTK_WIDGET (self->which));
  gtk_box_append (GTK_BOX (self->try_card), GTK_WIDGET (self->bath));
  gtk_box_append (GTK_BOX (self->try_card), GTK_WIDGET (self->shown));
  add_save (self, self->try_card, _("Record the try"), G_CALLBACK (try_cb));
}

static void
make_form (SteadInstrumentsPane *self,
           GtkWidget            *box)
{
  GtkWidget *card = add_card (box, _("One more instrument"));

  self->name = STEAD_FIELD (stead_field_new (_("Name of the instrument"), STEAD_FIELD_TEXT));
  self->kind = STEAD_PICK (stead_pick_new (_("Kind of instrument")));
  for (gsize i = 0; i < G_N_ELEMENTS (kind_names); i++)
    stead_pick_append (self->kind, (gint64) i + 1, _(kind_names[i]));
  stead_pick_show (self->kind, 1);
  self->scale = STEAD_PICK (stead_pick_new (_("Its scale")));
  stead_pick_append (self->scale, 1, _("Both °F and °C"));
  stead_pick_append (self->scale, 2, _("Only °F"));
  stead_pick_append (self->scale, 3, _("Only °C"));
  stead_pick_show (self->scale, 1);
  self->step = STEAD_FIELD (stead_field_new (_("Smallest step that it shows"), STEAD_FIELD_NUMBER));
  self->error = STEAD_FIELD (stead_field_new (_("Off by at most, plus or minus, as its maker says"), STEAD_FIELD_NUMBER));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->name));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->kind));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->scale));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->step));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->error));
  add_save (self, card, _("Save the instrument"), G_CALLBACK (add_cb));
}

static void
stead_instruments_pane_init (SteadInstrumentsPane *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *card;

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_margin_end (box, 6);
  card = add_card (box, _("Instruments in use"));
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);
  self->trouble = GTK_LABEL (stead_make_label ("", NULL));
  gtk_box_append (GTK_BOX (card), self->rows);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->trouble));
  make_try (self, box);
  make_form (self, box);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_widget_set_parent (scroller, GTK_WIDGET (self));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
}
