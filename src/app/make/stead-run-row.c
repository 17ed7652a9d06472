/* stead-run-row.c - one step on the run sheet: what to do, its limit, what was read, the time. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/make/stead-run-row.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

#define TAP_PX 44   /* least height of what a finger presses (common practice, no source) */

struct _SteadRunRow
{
  GtkWidget   parent_instance;

  SteadUnitSystem units;
  gint64      step_id, started_at;
  double      minutes;         /* planned; NAN: not said */
  guint       tick;            /* runs while the step does */

  GtkLabel   *number, *text, *limit, *own, *source, *verdict, *history, *time;
  GtkWidget  *reading_box, *record, *corrects, *start, *done, *again;
  SteadField *reading, *acid, *at;   /* a temperature, or a pH */
};

enum { START, DONE, AGAIN, READ, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadRunRow, stead_run_row, GTK_TYPE_WIDGET)

static gint64
now_s (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

/* "4:07" of a running step, with what was planned. */
static void
show_elapsed (SteadRunRow *self)
{
  gint64 seconds = MAX (0, now_s () - self->started_at);
  g_autofree char *number = isnan (self->minutes) ? NULL : stead_number_format (self->minutes, 1);
  g_autofree char *clock = g_strdup_printf ("%d:%02d", (int) (seconds / 60), (int) (seconds % 60));
  /* Translators: a running clock and the minutes that are planned: "4:07 of 10 min" */
  g_autofree char *text = number != NULL ? g_strdup_printf (_("%s of %s min"), clock, number)
                                         : g_strdup_printf (_("running for %s min"), clock);
  gboolean over = !isnan (self->minutes) && (double) seconds >= self->minutes * 60;
  /* Translators: a running clock, "12:07 of 10 min", that is past what was planned. */
  g_autofree char *up = over ? g_strdup_printf (_("%s: the time is up"), text) : NULL;

  stead_make_say (self->time, over ? up : text, FALSE);
  if (over)
    gtk_widget_add_css_class (GTK_WIDGET (self->time), "warn");
}

static gboolean
tick_cb (gpointer data)
{
  show_elapsed (data);
  return G_SOURCE_CONTINUE;
}

static void
press_cb (GtkButton *button,
          gpointer   row)
{
  SteadRunRow *self = row;
  GtkWidget *pressed = GTK_WIDGET (button);

  g_signal_emit (self, signals[pressed == self->start ? START : pressed == self->done ? DONE : AGAIN], 0);
}

static gboolean
is_acid (SteadRunRow *self)
{
  return gtk_widget_get_visible (GTK_WIDGET (self->acid));
}

static void
read_acid (SteadRunRow *self)
{
  double value;

  if (stead_field_is_empty (self->acid))
    stead_field_set_error (self->acid, _("Enter what the pH meter shows."));
  else if (stead_field_read_number (self->acid, NAN, &value) && !isnan (value))
    g_signal_emit (self, signals[READ], 0);
}

static void
read_cb (SteadRunRow *self)
{
  double value;

  if (is_acid (self))
    read_acid (self);
  else if (stead_field_is_empty (self->reading))
    stead_field_set_error (self->reading, _("Enter what the thermometer shows."));
  else if (stead_field_read_quantity (self->reading, NAN, &value) && !isnan (value))
    g_signal_emit (self, signals[READ], 0);
}

static GtkWidget *
large_button (SteadRunRow *self,
              const char  *label)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_size_request (button, 96, TAP_PX);
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  g_signal_connect (button, "clicked", G_CALLBACK (press_cb), self);
  return button;
}

static GtkLabel *
add_label (GtkWidget  *box,
           const char *style)
{
  GtkWidget *label = stead_make_label ("", style);

  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static GtkWidget *
make_reading (SteadRunRow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *press = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *record = gtk_button_new_with_label (_("Record reading"));

  self->record = record;
  gtk_widget_set_layout_manager (box, stead_wrap_layout_new ());
  self->reading = STEAD_FIELD (stead_field_new (_("Reading"), STEAD_FIELD_QUANTITY));
  self->acid = STEAD_FIELD (stead_field_new (_("pH"), STEAD_FIELD_NUMBER));
  self->at = STEAD_FIELD (stead_field_new (_("At"), STEAD_FIELD_TEXT));
  g_object_set (self->at, "hint", _("now"), NULL);
  g_signal_connect_swapped (self->reading, "activate", G_CALLBACK (read_cb), self);
  g_signal_connect_swapped (self->acid, "activate", G_CALLBACK (read_cb), self);
  g_signal_connect_swapped (self->at, "activate", G_CALLBACK (read_cb), self);
  g_signal_connect_swapped (record, "clicked", G_CALLBACK (read_cb), self);
  gtk_widget_set_size_request (GTK_WIDGET (self->reading), 170, -1);
  gtk_widget_set_size_request (GTK_WIDGET (self->acid), 90, -1);
  gtk_widget_set_size_request (GTK_WIDGET (self->at), 90, -1);
  gtk_widget_set_hexpand (GTK_WIDGET (self->reading), FALSE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->acid), FALSE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->at), FALSE);
  /* As the fields beside it: an empty line over the button. */
  gtk_box_append (GTK_BOX (press), gtk_label_new (NULL));
  gtk_box_append (GTK_BOX (press), record);
  gtk_widget_set_valign (press, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->reading));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->acid));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->at));
  gtk_box_append (GTK_BOX (box), press);
  return box;
}

static void
make_text (SteadRunRow *self,
           GtkWidget   *box)
{
  GtkWidget *readings = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  self->text = add_label (box, "strong");
  self->time = add_label (box, "soft");
  self->limit = add_label (box, NULL);
  self->own = add_label (box, NULL);
  self->source = add_label (box, "soft");
  gtk_widget_add_css_class (GTK_WIDGET (self->source), "small");
  self->verdict = add_label (box, "strong");
  self->history = add_label (box, "soft");
  gtk_widget_add_css_class (GTK_WIDGET (self->history), "small");
  gtk_box_append (GTK_BOX (readings), make_reading (self));
  self->corrects = gtk_check_button_new ();
  gtk_check_button_set_child (GTK_CHECK_BUTTON (self->corrects),
                              stead_make_label (_("The last reading was wrong; this one corrects it"), NULL));
  gtk_box_append (GTK_BOX (readings), self->corrects);
  gtk_widget_set_margin_top (readings, 3);
  self->reading_box = readings;
  gtk_box_append (GTK_BOX (box), self->reading_box);
}

static void
stead_run_row_init (SteadRunRow *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  self->number = add_label (row, "title");
  gtk_label_set_width_chars (self->number, 2);
  gtk_widget_set_valign (GTK_WIDGET (self->number), GTK_ALIGN_START);
  gtk_widget_set_hexpand (box, TRUE);
  make_text (self, box);
  gtk_box_append (GTK_BOX (row), box);
  self->start = large_button (self, _("Start"));
  self->done = large_button (self, _("Done"));
  self->again = large_button (self, _("Not done"));
  gtk_box_append (GTK_BOX (row), self->start);
  gtk_box_append (GTK_BOX (row), self->done);
  gtk_box_append (GTK_BOX (row), self->again);
  gtk_widget_set_parent (row, GTK_WIDGET (self));
}

static void
stead_run_row_dispose (GObject *object)
{
  SteadRunRow *self = STEAD_RUN_ROW (object);

  g_clear_handle_id (&self->tick, g_source_remove);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_run_row_parent_class)->dispose (object);
}

static void
stead_run_row_class_init (SteadRunRowClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_run_row_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[START] = g_signal_new ("start", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[DONE] = g_signal_new ("done", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[AGAIN] = g_signal_new ("again", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[READ] = g_signal_new ("read", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

GtkWidget *
stead_run_row_new (SteadUnitSystem units)
{
  SteadRunRow *self = g_object_new (STEAD_TYPE_RUN_ROW, NULL);

  self->units = units;
  stead_field_set_unit (self->reading, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units));
  return GTK_WIDGET (self);
}

/* --- showing ------------------------------------------------------------------------------ */

static void
show_verdict (SteadRunRow        *self,
              const SteadRunLine *line)
{
  gboolean bad = line->verdict == STEAD_RUN_NOT_MET;
  g_autofree char *text = NULL;

  if (line->reading != NULL && line->verdict_text != NULL)
    /* Translators: a sign, a reading and what it means: "✓ 158 °F: met". */
    text = g_strdup_printf (_("%s %s: %s"), bad ? "⚠" : line->verdict == STEAD_RUN_MET ? "✓" : "…",
                            line->reading, line->verdict_text);
  stead_make_say (self->verdict, text, FALSE);
  gtk_widget_remove_css_class (GTK_WIDGET (self->verdict), bad ? "good" : "warn");
  gtk_widget_add_css_class (GTK_WIDGET (self->verdict), bad ? "warn" : "good");
}

/* All readings of the step, with their times; those that were corrected are named so. */
static void
show_history (SteadRunRow        *self,
              const SteadRunLine *line,
              const GPtrArray    *readings)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < readings->len; i++)
    {
      const SteadShown *shown = readings->pdata[i];
      g_autofree char *clock = stead_make_clock (shown->at);
      g_autofree char *value = stead_run_value_text (shown, self->units);

      if (shown->step_id != line->step->id)
        continue;
      if (text->len > 0)
        g_string_append (text, " · ");
      /* Translators: a time of the day and a reading: "10:20 158 °F". */
      g_string_append_printf (text, shown->corrected ? _("%s %s (wrong, corrected)") : C_("reading", "%s %s"), clock, value);
    }
  stead_make_say (self->history, text->str, FALSE);
  gtk_widget_set_visible (self->corrects, line->shown != NULL);
  if (line->shown == NULL)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->corrects), FALSE);
  g_string_free (text, TRUE);
}

static void
show_time (SteadRunRow            *self,
           const SteadKitchenStep *step,
           const char             *who)
{
  g_autofree char *clock = NULL, *text = NULL, *number = NULL;
  gboolean runs = step->started_at != STEAD_TIME_NONE && step->done_at == STEAD_TIME_NONE;

  g_clear_handle_id (&self->tick, g_source_remove);
  gtk_widget_remove_css_class (GTK_WIDGET (self->time), "warn");
  self->started_at = step->started_at;
  self->minutes = step->minutes;
  if (runs)
    {
      show_elapsed (self);
      self->tick = g_timeout_add_seconds (1, tick_cb, self);
      return;
    }
  if (step->done_at != STEAD_TIME_NONE)
    {
      clock = stead_make_clock (step->done_at);
      /* Translators: a time of the day, and who did it. */
      text = who != NULL ? g_strdup_printf (_("Done at %s by %s"), clock, who) : g_strdup_printf (_("Done at %s"), clock);
    }
  else if (!isnan (step->minutes))
    {
      number = stead_number_format (step->minutes, 1);
      text = g_strdup_printf (_("%s min"), number);
    }
  stead_make_say (self->time, text, FALSE);
}

static void
name_buttons (SteadRunRow        *self,
              const SteadRunLine *line)
{
  /* Translators: what a button is for: "Start step 2". */
  g_autofree char *start = g_strdup_printf (_("Start step %d"), line->number);
  g_autofree char *done = g_strdup_printf (_("Step %d is done"), line->number);
  g_autofree char *again = g_strdup_printf (_("Step %d is not done"), line->number);
  g_autofree char *reading = g_strdup_printf (_("Reading of step %d"), line->number);
  g_autofree char *record = g_strdup_printf (_("Record the reading of step %d"), line->number);
  g_autofree char *corrects = g_strdup_printf (_("Corrects the last reading of step %d"), line->number);
  g_autofree char *acid = g_strdup_printf (_("pH at step %d"), line->number);

  stead_ui_name (self->start, start);
  stead_ui_name (self->done, done);
  stead_ui_name (self->again, again);
  stead_ui_name (self->record, record);
  stead_ui_name (self->corrects, corrects);
  g_object_set (self->reading, "label", reading, NULL);
  g_object_set (self->acid, "label", acid, NULL);
}

void
stead_run_row_show (SteadRunRow        *self,
                    const SteadRunLine *line,
                    const GPtrArray    *readings,
                    gboolean            open)
{
  const SteadKitchenStep *step = line->step;
  g_autofree char *number = g_strdup_printf ("%d", line->number);
  g_autofree char *limit = line->limit != NULL ? g_strdup_printf (_("Limit: %s"), line->limit) : NULL;
  g_autofree char *own = line->own != NULL ? g_strdup_printf (_("This recipe asks for %s"), line->own) : NULL;
  gboolean done = step->done_at != STEAD_TIME_NONE;

  g_return_if_fail (STEAD_IS_RUN_ROW (self));

  self->step_id = step->id;
  gtk_label_set_text (self->number, number);
  gtk_label_set_text (self->text, step->text);
  stead_make_say (self->limit, limit, FALSE);
  stead_make_say (self->own, own, FALSE);
  stead_make_say (self->source, line->source, FALSE);
  name_buttons (self, line);
  show_verdict (self, line);
  show_history (self, line, readings);
  show_time (self, step, line->who);
  gtk_widget_set_visible (self->reading_box, open && line->measure != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->acid), g_strcmp0 (line->measure, "ph") == 0);
  gtk_widget_set_visible (GTK_WIDGET (self->reading), g_strcmp0 (line->measure, "ph") != 0);
  gtk_widget_set_visible (self->start, open && !done && step->started_at == STEAD_TIME_NONE);
  gtk_widget_set_visible (self->done, open && !done);
  gtk_widget_set_visible (self->again, open && done);
}

gint64
stead_run_row_get_id (SteadRunRow *self)
{
  g_return_val_if_fail (STEAD_IS_RUN_ROW (self), 0);
  return self->step_id;
}

gboolean
stead_run_row_get_reading (SteadRunRow *self,
                           double      *out_value,
                           const char **out_clock,
                           gboolean    *out_corrects)
{
  g_return_val_if_fail (STEAD_IS_RUN_ROW (self), FALSE);

  if (!(is_acid (self) ? stead_field_read_number (self->acid, NAN, out_value)
                       : stead_field_read_quantity (self->reading, NAN, out_value)) || isnan (*out_value))
    return FALSE;
  *out_clock = stead_field_is_empty (self->at) ? NULL : stead_field_get_text (self->at);
  *out_corrects = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->corrects));
  return TRUE;
}

void
stead_run_row_complain (SteadRunRow *self,
                        const char  *message,
                        gboolean     of_clock)
{
  g_return_if_fail (STEAD_IS_RUN_ROW (self));
  stead_field_set_error (of_clock ? self->at : is_acid (self) ? self->acid : self->reading, message);
}

void
stead_run_row_clear (SteadRunRow *self)
{
  g_return_if_fail (STEAD_IS_RUN_ROW (self));
  stead_field_set_text (self->reading, "");
  stead_field_set_text (self->acid, "");
  stead_field_set_text (self->at, "");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->corrects), FALSE);
}
