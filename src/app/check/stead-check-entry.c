/* stead-check-entry.c - where one reading is typed: what was shown, for how long, when. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-check-entry-private.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-draft.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

/* A number, a time, initials. */
#define FIELD_CHARS 8

enum { READ, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadCheckEntry, stead_check_entry, GTK_TYPE_WIDGET)

static void
read_cb (SteadCheckEntry *self)
{
  g_signal_emit (self, signals[READ], 0);
}

static void
as_typed_cb (SteadCheckEntry *self)
{
  self->confirmed = TRUE;
  read_cb (self);
}

static void
otherwise_cb (SteadCheckEntry *self)
{
  self->confirmed = TRUE;
  self->scale = self->other;
  read_cb (self);
}

/* Another number is another question. */
static void
changed_cb (SteadCheckEntry *self)
{
  self->confirmed = FALSE;
  self->scale = NULL;
  gtk_widget_hide (self->ask);
}

static SteadField *
add_field (SteadCheckEntry *self,
           GtkWidget       *box,
           const char      *label,
           int              width)
{
  GtkWidget *field = stead_field_new (label, STEAD_FIELD_TEXT);

  stead_field_set_width (STEAD_FIELD (field), FIELD_CHARS);
  g_signal_connect_swapped (field, "activate", G_CALLBACK (read_cb), self);
  gtk_widget_set_size_request (field, width, -1);
  gtk_widget_set_hexpand (field, FALSE);
  gtk_box_append (GTK_BOX (box), field);
  return STEAD_FIELD (field);
}

static void
make_ask (SteadCheckEntry *self,
          GtkWidget       *box)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->ask = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->question = GTK_LABEL (stead_make_label ("", "caution"));
  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  self->as_typed = gtk_button_new ();
  self->otherwise = gtk_button_new ();
  g_signal_connect_swapped (self->as_typed, "clicked", G_CALLBACK (as_typed_cb), self);
  g_signal_connect_swapped (self->otherwise, "clicked", G_CALLBACK (otherwise_cb), self);
  gtk_box_append (GTK_BOX (row), self->otherwise);
  gtk_box_append (GTK_BOX (row), self->as_typed);
  gtk_box_append (GTK_BOX (self->ask), GTK_WIDGET (self->question));
  gtk_box_append (GTK_BOX (self->ask), row);
  gtk_widget_hide (self->ask);
  gtk_box_append (GTK_BOX (box), self->ask);
}

/* Time and initials are carried on from one line to the next: they are not typed for this one. */
static void
watch_typed (SteadCheckEntry *self)
{
  GtkWidget *parts[] = { GTK_WIDGET (self->value), GTK_WIDGET (self->held), GTK_WIDGET (self->strength),
                         GTK_WIDGET (self->second) };

  stead_draft_watch (GTK_WIDGET (self), parts, G_N_ELEMENTS (parts));
}

static void
stead_check_entry_init (SteadCheckEntry *self)
{
  GtkWidget *whole = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *press = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *last = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_set_layout_manager (box, stead_wrap_layout_new ());
  self->value = add_field (self, box, _("Reading"), 150);
  self->held = add_field (self, box, _("Held for, seconds"), 150);
  self->strength = add_field (self, box, _("Strength, mg/L"), 150);
  self->second = add_field (self, box, _("pH"), 150);
  self->at = add_field (self, last, _("At"), 100);
  self->who = add_field (self, last, _("Initials"), 100);
  g_object_set (self->at, "hint", _("now"), NULL);
  g_signal_connect_swapped (self->value, "changed", G_CALLBACK (changed_cb), self);
  self->save = gtk_button_new_with_label (_("Record reading"));
  g_signal_connect_swapped (self->save, "clicked", G_CALLBACK (read_cb), self);
  /* As the fields beside it, and never without them: an empty line over the button. */
  gtk_box_append (GTK_BOX (press), gtk_label_new (NULL));
  gtk_box_append (GTK_BOX (press), self->save);
  gtk_widget_set_valign (press, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (last), press);
  gtk_box_append (GTK_BOX (box), last);
  gtk_box_append (GTK_BOX (whole), box);
  make_ask (self, whole);
  gtk_widget_set_parent (whole, GTK_WIDGET (self));
  watch_typed (self);
}

static void
stead_check_entry_dispose (GObject *object)
{
  SteadCheckEntry *self = STEAD_CHECK_ENTRY (object);

  g_clear_pointer (&self->last_at, g_free);
  g_clear_pointer (&self->last_who, g_free);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_check_entry_parent_class)->dispose (object);
}

static void
stead_check_entry_class_init (SteadCheckEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_check_entry_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[READ] = g_signal_new ("read", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

GtkWidget *
stead_check_entry_new (void)
{
  return g_object_new (STEAD_TYPE_CHECK_ENTRY, NULL);
}

/* --- showing -------------------------------------------------------------------------------- */

gboolean
stead_check_entry_is_warmth (const SteadListLine *line)
{
  return g_strcmp0 (line->unit, "F") == 0 || g_strcmp0 (line->unit, "C") == 0;
}

static const char *
unit_text (SteadCheckEntry     *self,
           const SteadListLine *line)
{
  if (stead_check_entry_is_warmth (line))
    return stead_unit_symbol (stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->units));
  return line->unit != NULL ? line->unit : "";
}

/* Of what is mixed strength and pH are measured at the same time; with quats how hard the water is. */
static void
show_solution (SteadCheckEntry     *self,
               const SteadListLine *line,
               int                  number)
{
  gboolean mixed = stead_list_line_is_mixed (line), quat = g_strcmp0 (line->subject, "quat") == 0;
  /* Translators: the number of a check. */
  g_autofree char *strength = g_strdup_printf (_("Strength at check %d, mg/L"), number);
  g_autofree char *second = g_strdup_printf (quat ? _("Hardness of the water at check %d, mg/L") : _("pH at check %d"), number);

  gtk_widget_set_visible (GTK_WIDGET (self->strength), mixed);
  gtk_widget_set_visible (GTK_WIDGET (self->second), mixed);
  g_object_set (self->strength, "label", strength, NULL);
  g_object_set (self->second, "label", second, NULL);
}

/* What is typed so late was taken down on paper. */
static gboolean
is_past (const SteadCheckAnswer *answer,
         gint64                  now)
{
  return stead_time_day (now) > answer->list->day && now >= stead_time_midnight (answer->list->day) + DAY_S + NIGHT_S;
}

void
stead_check_entry_show (SteadCheckEntry        *self,
                        SteadCheckAnswer       *answer,
                        const SteadCheckedLine *line,
                        int                     number)
{
  g_autofree char *value = NULL, *held = NULL, *at = NULL, *who = NULL, *save = NULL;

  g_return_if_fail (STEAD_IS_CHECK_ENTRY (self));

  self->units = answer->farm->units;
  self->on_paper = is_past (answer, g_get_real_time () / G_USEC_PER_SEC);
  self->tick = g_str_equal (line->line->measure, STEAD_MEASURE_DONE);
  /* Translators: the number of a check, a unit: "Reading of check 4, °F". */
  value = g_strdup_printf (_("Reading of check %d, %s"), number, unit_text (self, line->line));
  held = g_strdup_printf (_("Check %d held for, seconds"), number);
  at = g_strdup_printf (_("Time of check %d"), number);
  save = g_strdup_printf (_("Record the reading of check %d"), number);
  g_object_set (self->value, "label", value, NULL);
  g_object_set (self->held, "label", held, NULL);
  g_object_set (self->at, "label", at, "hint", self->on_paper ? NULL : _("now"), NULL);
  who = g_strdup_printf (_("Initials at check %d"), number);
  g_object_set (self->who, "label", who, NULL);
  stead_ui_name (self->save, save);
  gtk_widget_set_visible (GTK_WIDGET (self->value), !self->tick);
  gtk_widget_set_visible (GTK_WIDGET (self->who), self->on_paper);
  gtk_widget_set_visible (gtk_widget_get_parent (self->save), !self->tick);
  gtk_widget_set_visible (GTK_WIDGET (self->held), stead_list_line_is_timed (line->line));
  show_solution (self, line->line, number);
  stead_draft_name (GTK_WIDGET (self), value);
}

void
stead_check_entry_show_pot (SteadCheckEntry        *self,
                            SteadCheckAnswer       *answer,
                            const SteadCheckedLine *line,
                            const char             *name)
{
  g_autofree char *value = NULL, *at = NULL, *save = NULL;

  g_return_if_fail (STEAD_IS_CHECK_ENTRY (self));

  self->units = answer->farm->units;
  self->on_paper = is_past (answer, g_get_real_time () / G_USEC_PER_SEC);
  /* Translators: the name of a pot, a unit: "Reading of Sauce, °F". */
  value = g_strdup_printf (_("Reading of %s, %s"), name, unit_text (self, line->line));
  /* Translators: the name of a pot. */
  at = g_strdup_printf (_("Time of the reading of %s"), name);
  /* Translators: the name of a pot. */
  save = g_strdup_printf (_("Record the reading of %s"), name);
  g_object_set (self->value, "label", value, NULL);
  g_object_set (self->at, "label", at, NULL);
  stead_ui_name (self->save, save);
  gtk_widget_hide (GTK_WIDGET (self->held));
  gtk_widget_hide (GTK_WIDGET (self->who));
  gtk_widget_hide (GTK_WIDGET (self->strength));
  gtk_widget_hide (GTK_WIDGET (self->second));
  stead_draft_name (GTK_WIDGET (self), value);
}

/* --- from one line to the next ---------------------------------------------------------------- */

gboolean
stead_check_entry_is_on_paper (SteadCheckEntry *self)
{
  g_return_val_if_fail (STEAD_IS_CHECK_ENTRY (self), FALSE);
  return self->on_paper;
}

void
stead_check_entry_carry (SteadCheckEntry *self,
                         SteadCheckEntry *next)
{
  g_return_if_fail (STEAD_IS_CHECK_ENTRY (self) && STEAD_IS_CHECK_ENTRY (next));

  if (!self->on_paper)
    return;
  if (self->last_at != NULL && stead_field_is_empty (next->at))
    stead_field_set_text (next->at, self->last_at);
  if (self->last_who != NULL && stead_field_is_empty (next->who))
    stead_field_set_text (next->who, self->last_who);
}

void
stead_check_entry_complain (SteadCheckEntry *self,
                            const char      *message)
{
  g_return_if_fail (STEAD_IS_CHECK_ENTRY (self));
  stead_field_set_error (self->value, message);
}

void
stead_check_entry_clear (SteadCheckEntry *self)
{
  g_return_if_fail (STEAD_IS_CHECK_ENTRY (self));
  g_free (self->last_at);
  g_free (self->last_who);
  self->last_at = g_strdup (stead_field_get_text (self->at));
  self->last_who = g_strdup (stead_field_get_text (self->who));
  stead_field_set_text (self->value, "");
  stead_field_set_text (self->held, "");
  stead_field_set_text (self->at, "");
  stead_field_set_text (self->who, "");
  stead_field_set_text (self->strength, "");
  stead_field_set_text (self->second, "");
  changed_cb (self);
}

void
stead_check_entry_focus (SteadCheckEntry *self)
{
  g_return_if_fail (STEAD_IS_CHECK_ENTRY (self));
  gtk_widget_grab_focus (GTK_WIDGET (!self->tick ? self->value : self->at));
}

void
stead_check_entry_set_corrects (SteadCheckEntry *self,
                                gboolean         corrects)
{
  g_return_if_fail (STEAD_IS_CHECK_ENTRY (self));
  self->corrects = corrects;
}
