/* stead-check-entry.c - where one reading is typed: what was shown, for how long, when. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-check-entry.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

struct _SteadCheckEntry
{
  GtkWidget        parent_instance;

  SteadUnitSystem  units;
  const char      *scale;        /* in which an odd reading was after all: "F", "C"; NULL: not asked */
  gboolean         confirmed;    /* it is as typed, however odd */
  gboolean         on_paper;     /* a list of an earlier day: when and by whom it was read stands on the sheet */
  gboolean         tick;         /* nothing is read but that it was done */
  char            *last_at, *last_who;   /* (nullable): as typed last; they are proposed for the next line */
  gboolean         corrects;     /* a wrong reading, whose time stays if none is typed */
  const char      *other;        /* the other scale than typed */

  SteadField      *value, *held, *at, *who;
  SteadField      *strength, *second;   /* of a sanitizer: how strong; its pH, or how hard the water is */
  GtkWidget       *save, *ask, *as_typed, *otherwise;
  GtkLabel        *question;
};

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

static gboolean
is_warmth (const SteadListLine *line)
{
  return g_strcmp0 (line->unit, "F") == 0 || g_strcmp0 (line->unit, "C") == 0;
}

static const char *
unit_text (SteadCheckEntry     *self,
           const SteadListLine *line)
{
  if (is_warmth (line))
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

/* Hours after midnight that still belong to the work of the day before; common practice, no source. */
#define NIGHT_S (5 * 3600)
#define DAY_S 86400

/* What is typed so late was taken down on paper. */
static gboolean
is_past (const SteadCheckAnswer *answer,
         gint64                  now)
{
  return stead_time_day (now) > answer->list->day && now >= stead_time_midnight (answer->list->day) + DAY_S + NIGHT_S;
}

static gint64
time_now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
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
  self->on_paper = is_past (answer, time_now ());
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
}

/* --- reading --------------------------------------------------------------------------------- */

/* The number as typed, and the scale: as typed with it, else that of the farm, else what was answered. */
static gboolean
read_value (SteadCheckEntry      *self,
            const SteadListLine  *line,
            double               *out_value,
            const char          **out_unit,
            GError              **error)
{
  const char *text = stead_field_get_text (self->value);
  const SteadUnit *usual = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, self->units), *unit = NULL;
  double base;

  if (!is_warmth (line))
    {
      *out_unit = line->unit;
      return stead_number_parse (text, out_value, error);
    }
  if (!stead_quantity_parse (text, STEAD_DIMENSION_TEMPERATURE, usual, &base, &unit, error))
    return FALSE;
  *out_value = stead_quantity_from_base (base, unit);
  *out_unit = self->scale != NULL ? self->scale : g_str_equal (unit->id, "degC") ? "C" : "F";
  return TRUE;
}

/* A reading that is typed in so long after it was taken says so. */
#define LATE_S 1800

/* Now, or a time of the day of the list; what was read after midnight is of the next day.  Of a
 * list of an earlier day the time is asked for: it was taken down on paper. */
static gboolean
read_time (SteadCheckEntry       *self,
           SteadCheckAnswer      *answer,
           gint64                 now,
           SteadShown            *shown)
{
  gint64 midnight = stead_time_midnight (answer->list->day);
  g_autoptr(GError) error = NULL;

  shown->at = now;
  if (stead_field_is_empty (self->at) && self->corrects)
    {
      shown->at = STEAD_TIME_NONE;
      shown->noted_at = now;
      return TRUE;
    }
  if (stead_field_is_empty (self->at) && is_past (answer, now))
    {
      stead_field_set_error (self->at, _("The list is of an earlier day. Enter at what time it was read."));
      gtk_widget_grab_focus (GTK_WIDGET (self->at));
      return FALSE;
    }
  if (stead_field_is_empty (self->at))
    return TRUE;
  if (!stead_make_read_clock (stead_field_get_text (self->at), answer->list->day, &shown->at, &error))
    {
      stead_field_set_error (self->at, error->message);
      return FALSE;
    }
  if (shown->at < midnight + NIGHT_S && shown->at + DAY_S <= now)
    shown->at += DAY_S;
  shown->noted_at = shown->at + LATE_S < now ? now : 0;
  return TRUE;
}

/* Initials that stand on the sheet; without any it is who was chosen for the whole list. */
static gboolean
read_who (SteadCheckEntry  *self,
          SteadCheckAnswer *answer,
          SteadShown       *shown)
{
  g_autoptr(GError) error = NULL;

  shown->person_id = 0;
  if (!gtk_widget_get_visible (GTK_WIDGET (self->who)) || stead_field_is_empty (self->who))
    return TRUE;
  shown->person_id = stead_check_find_person (answer->people, stead_field_get_text (self->who), &error);
  if (shown->person_id != 0)
    return TRUE;
  stead_field_set_error (self->who, error->message);
  gtk_widget_grab_focus (GTK_WIDGET (self->who));
  return FALSE;
}

static gboolean
read_number (SteadField *field,
             double     *out)
{
  g_autoptr(GError) error = NULL;

  if (stead_field_is_empty (field) || stead_number_parse (stead_field_get_text (field), out, &error))
    return TRUE;
  stead_field_set_error (field, error->message);
  return FALSE;
}

/* Return leads on to what is still to be typed. */
static gboolean
want (SteadField *field,
      const char *message)
{
  stead_field_set_error (field, message);
  gtk_widget_grab_focus (GTK_WIDGET (field));
  return FALSE;
}

/* @warmth_f: what the thermometer shows in it. */
static gboolean
read_solution (SteadCheckEntry     *self,
               const SteadListLine *line,
               double               warmth_f,
               SteadSolution       *out)
{
  gboolean quat = g_strcmp0 (line->subject, "quat") == 0;

  *out = (SteadSolution) { line->subject, NAN, NAN, warmth_f, NAN };
  if (!stead_list_line_is_mixed (line))
    return TRUE;
  if (!read_number (self->strength, &out->strength_mgl)
      || !read_number (self->second, quat ? &out->hardness_mgl : &out->ph))
    return FALSE;
  if (!quat && isnan (out->strength_mgl))
    return want (self->strength, _("Dip a test strip, and enter what it shows."));
  if (!quat && isnan (out->ph))
    return want (self->second, _("Dip a pH strip, and enter what it shows. How well it works goes by it."));
  return TRUE;
}

static gboolean
ask_about (SteadCheckEntry         *self,
           const SteadCheckVerdict *verdict)
{
  if (verdict->as_typed == NULL)
    {
      gboolean of_time = verdict->judged.odd == STEAD_CHECK_ODD_FUTURE || verdict->judged.odd == STEAD_CHECK_ODD_BEFORE;

      stead_field_set_error (of_time ? self->at : self->value, verdict->question);
      return FALSE;
    }
  self->other = g_strcmp0 (verdict->judged.other_unit, "C") == 0 ? "C" : "F";
  gtk_label_set_text (self->question, verdict->question);
  gtk_button_set_label (GTK_BUTTON (self->as_typed), verdict->as_typed);
  gtk_button_set_label (GTK_BUTTON (self->otherwise), verdict->otherwise);
  stead_ui_name (self->as_typed, verdict->as_typed);
  stead_ui_name (self->otherwise, verdict->otherwise);
  gtk_widget_show (self->ask);
  gtk_widget_grab_focus (self->otherwise);
  return FALSE;
}

/* Whether the reading is to be kept as it is. */
static gboolean
is_settled (SteadCheckEntry         *self,
            const SteadCheckVerdict *verdict,
            double                   held_s)
{
  if (verdict->question != NULL)
    return ask_about (self, verdict);
  if (verdict->judged.outcome == STEAD_CHECK_IF_HELD && isnan (held_s))
    {
      stead_field_set_error (self->held, _("Hot enough. How long did it stay so? Enter 0 if nobody timed it."));
      gtk_widget_grab_focus (GTK_WIDGET (self->held));
      return FALSE;
    }
  return TRUE;
}

gboolean
stead_check_entry_read (SteadCheckEntry        *self,
                        SteadCheckAnswer       *answer,
                        const SteadCheckedLine *line,
                        SteadShown             *shown,
                        SteadSolution          *solution)
{
  gint64 now = time_now ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckVerdict) verdict = NULL;
  const char *unit = NULL;
  double value = NAN, held = NAN;

  g_return_val_if_fail (STEAD_IS_CHECK_ENTRY (self), FALSE);

  if (stead_field_is_empty (self->value))
    {
      stead_field_set_error (self->value, _("Enter what the instrument shows."));
      return FALSE;
    }
  if (!read_value (self, line->line, &value, &unit, &error))
    {
      stead_field_set_error (self->value, error->message);
      return FALSE;
    }
  if (!stead_field_is_empty (self->held) && !stead_number_parse (stead_field_get_text (self->held), &held, &error))
    {
      stead_field_set_error (self->held, error->message);
      return FALSE;
    }
  if (!read_time (self, answer, now, shown) || !read_who (self, answer, shown))
    return FALSE;
  if (!read_solution (self, line->line, g_strcmp0 (unit, "C") == 0 ? stead_fahrenheit_from_celsius (value) : value, solution))
    return FALSE;
  if (!stead_list_line_is_cooling (line->line))
    {
      verdict = stead_check_answer_judge (answer, line, value, unit, solution, held, shown->at, self->confirmed, &error);
      if (verdict == NULL)
        stead_field_set_error (self->value, error->message);
      if (verdict == NULL || !is_settled (self, verdict, held))
        return FALSE;
    }
  shown->scale = is_warmth (line->line) ? unit[0] : 0;
  shown->value = shown->scale == 'F' ? (value - 32) / 1.8 : value;
  shown->held_s = held > 0 ? held : NAN;
  return TRUE;
}

gboolean
stead_check_entry_read_tick (SteadCheckEntry  *self,
                             SteadCheckAnswer *answer,
                             SteadShown       *shown)
{
  gint64 now = time_now ();

  g_return_val_if_fail (STEAD_IS_CHECK_ENTRY (self), FALSE);

  if (!self->on_paper)
    {
      shown->at = now;
      return TRUE;
    }
  return read_time (self, answer, now, shown) && read_who (self, answer, shown);
}

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
