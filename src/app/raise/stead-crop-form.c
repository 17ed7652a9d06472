/* stead-crop-form.c - the form of a crop's day: what was picked, how warm it was, plants lost.
 *
 * One press writes all of it in one step: the pick as a lot, the readings of the
 * thermometer, and an entry of the log.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-crop-form.h"

#include "answer/stead-crop-pick.h"
#include "app/stead-draft.h"
#include "app/stead-field.h"
#include "app/stead-person-pick.h"
#include "app/stead-ui.h"

#define RESOURCE STEAD_UI ("raise/stead-crop-form.ui")

struct _SteadCropForm
{
  GtkWidget        parent_instance;

  SteadDesk       *desk;
  gint64           crop_id;
  gint64           climate_id;   /* place of the thermometer; 0: outdoors */
  SteadDay         today;        /* for which the day was proposed */

  GtkLabel        *form_title, *error;
  SteadField      *day, *picked, *grade, *thrown, *reason, *highest, *lowest, *lost, *note;
  SteadPersonPick *person;
};

G_DEFINE_FINAL_TYPE (SteadCropForm, stead_crop_form, GTK_TYPE_WIDGET)

/* All that one press writes. */
typedef struct
{
  SteadPick       pick;
  SteadClimateDay climate;
  SteadCropEntry  entry;
} Day;

static gboolean
has_pick (const Day *day)
{
  return day->pick.good_kg > 0 || day->pick.lost_kg > 0;
}

static gboolean
has_climate (const Day *day)
{
  return !isnan (day->climate.min_c) || !isnan (day->climate.max_c);
}

/* The note goes with the pick, unless there is an entry to bear it. */
static gboolean
has_entry (const Day *day)
{
  return day->entry.lost > 0 || (day->entry.note != NULL && !has_pick (day));
}

/* (transfer none) (nullable) */
static const char *
text_of (SteadField *field)
{
  return stead_field_is_empty (field) ? NULL : stead_field_get_text (field);
}

/* The texts of @out are the fields' own. */
static gboolean
read_fields (SteadCropForm *self,
             Day           *out)
{
  SteadDay day = STEAD_DAY_NONE;
  gint64 lost = 0, person = stead_person_pick_get (self->person);
  double picked = 0, thrown = 0, highest = NAN, lowest = NAN;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &day);

  good &= stead_field_read_quantity (self->picked, 0, &picked);
  good &= stead_field_read_quantity (self->thrown, 0, &thrown);
  good &= stead_field_read_quantity (self->highest, NAN, &highest);
  good &= stead_field_read_quantity (self->lowest, NAN, &lowest);
  good &= stead_field_read_count (self->lost, 0, &lost);
  if (!good)
    return FALSE;
  *out = (Day) {
    .pick = { .crop_id = self->crop_id, .day = day, .good_kg = picked, .lost_kg = thrown,
              .reason = thrown > 0 ? text_of (self->reason) : NULL, .grade = text_of (self->grade),
              .note = lost > 0 ? NULL : text_of (self->note), .person_id = person },
    .climate = { .place_id = self->climate_id, .day = day, .min_c = lowest, .max_c = highest,
                 .rh_frac = NAN, .light_mol = NAN, .person_id = person },
    .entry = { .crop_id = self->crop_id, .day = day, .lost = (gint32) MIN (lost, G_MAXINT32),
               .reason = (char *) (lost > 0 ? text_of (self->reason) : NULL), .note = (char *) text_of (self->note),
               .person_id = person },
  };
  return TRUE;
}

/* What can be told at its own field. */
static gboolean
check_fields (SteadCropForm *self,
              const Day     *day)
{
  SteadField *wrong = NULL;
  const char *message = NULL;

  if (!has_pick (day) && !has_climate (day) && !has_entry (day))
    {
      wrong = self->picked;
      message = _("Enter what was picked, a temperature, lost plants or a note.");
    }
  else if (day->pick.lost_kg > 0 && day->pick.reason == NULL)
    {
      wrong = self->reason;
      message = _("Say why it was thrown out, such as “cracked”.");
    }
  else if (day->climate.min_c > day->climate.max_c)
    {
      wrong = self->lowest;
      message = _("The lowest temperature of the day is above the highest. Check the two readings.");
    }
  if (wrong == NULL)
    return TRUE;
  stead_field_set_error (wrong, message);
  gtk_widget_grab_focus (GTK_WIDGET (wrong));
  return FALSE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  Day *day = data;

  return (!has_climate (day) || stead_climate_repo_save (store, &day->climate, TRUE, error))
         && (!has_entry (day) || stead_crop_repo_save_entry (store, &day->entry, error))
         && (!has_pick (day) || stead_crop_pick_save (store, &day->pick, error));
}

static char *
step_name (SteadCropForm *self,
           const Day     *day)
{
  if (has_pick (day))
    return stead_crop_pick_name (&day->pick, stead_desk_get_farm (self->desk)->units);
  return has_climate (day) ? stead_crop_climate_name (&day->climate) : stead_crop_entry_name (&day->entry);
}

static void
empty_fields (SteadCropForm *self)
{
  SteadField *fields[] = { self->picked, self->grade, self->thrown, self->reason, self->highest, self->lowest,
                           self->lost, self->note };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    stead_field_set_text (fields[i], "");
  stead_field_show_day (self->day, self->today);
}

static void
record_cb (SteadCropForm *self)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;
  Day day;

  stead_ui_tell (self->error, NULL);
  if (!read_fields (self, &day) || !check_fields (self, &day))
    return;
  step = step_name (self, &day);
  if (!stead_desk_act (self->desk, step, save_act, &day, &error))
    {
      stead_ui_tell (self->error, error->message);
      return;
    }
  empty_fields (self);
  stead_draft_begin (GTK_WIDGET (self));
  stead_crop_form_focus (self);
}

static void
stead_crop_form_dispose (GObject *object)
{
  SteadCropForm *self = STEAD_CROP_FORM (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_CROP_FORM);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_crop_form_parent_class)->dispose (object);
}

#define BIND(child) gtk_widget_class_bind_template_child (widget_class, SteadCropForm, child)

static void
stead_crop_form_class_init (SteadCropFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PERSON_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_crop_form_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  BIND (form_title);
  BIND (error);
  BIND (day);
  BIND (picked);
  BIND (grade);
  BIND (thrown);
  BIND (reason);
  BIND (highest);
  BIND (lowest);
  BIND (lost);
  BIND (note);
  BIND (person);
  gtk_widget_class_bind_template_callback (widget_class, record_cb);
}

/* One straight edge at the left of all entries. */
static void
share_width (SteadCropForm *self)
{
  g_autoptr(GtkSizeGroup) group = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  SteadField *fields[] = { self->day, self->picked, self->grade, self->thrown, self->reason, self->highest,
                           self->lowest, self->lost, self->note };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    stead_field_share_width (fields[i], group);
  stead_person_pick_share_width (self->person, group);
}

static void
watch_typed (SteadCropForm *self)
{
  GtkWidget *parts[] = { GTK_WIDGET (self->picked), GTK_WIDGET (self->grade), GTK_WIDGET (self->thrown),
                         GTK_WIDGET (self->reason), GTK_WIDGET (self->highest), GTK_WIDGET (self->lowest),
                         GTK_WIDGET (self->lost), GTK_WIDGET (self->note), GTK_WIDGET (self->day) };

  stead_draft_watch (GTK_WIDGET (self), parts, G_N_ELEMENTS (parts));
}

static void
stead_crop_form_init (SteadCropForm *self)
{
  self->today = STEAD_DAY_NONE;
  gtk_widget_init_template (GTK_WIDGET (self));
  share_width (self);
  watch_typed (self);
}

static void
set_units (SteadCropForm   *self,
           SteadUnitSystem  units)
{
  const SteadUnit *mass = stead_unit_default (STEAD_DIMENSION_MASS, units);
  const SteadUnit *degrees = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units);

  stead_field_set_unit (self->picked, mass);
  stead_field_set_unit (self->thrown, mass);
  stead_field_set_unit (self->highest, degrees);
  stead_field_set_unit (self->lowest, degrees);
}

void
stead_crop_form_show (SteadCropForm         *self,
                      SteadDesk             *desk,
                      const SteadCropAnswer *answer)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadDay today = stead_store_get_today (store);
  gboolean same = self->crop_id == answer->crop->batch.id && self->today == today;
  g_autofree char *day = stead_day_format (today, STEAD_DAY_STYLE_LONG);
  /* Translators: a date with its weekday follows */
  g_autofree char *title = g_strdup_printf (_("Today, %s"), day);

  g_return_if_fail (STEAD_IS_CROP_FORM (self));

  g_set_object (&self->desk, desk);
  self->crop_id = answer->crop->batch.id;
  self->climate_id = answer->crop->climate_id;
  self->today = today;
  gtk_label_set_text (self->form_title, title);
  stead_field_set_today (self->day, today);
  set_units (self, answer->farm->units);
  stead_person_pick_fill (self->person, store);
  if (same)
    return;
  stead_draft_turn (GTK_WIDGET (self), answer->crop->batch.id, answer->crop->batch.name);
  empty_fields (self);
  stead_draft_begin (GTK_WIDGET (self));
  stead_ui_tell (self->error, NULL);
}

void
stead_crop_form_focus (SteadCropForm *self)
{
  g_return_if_fail (STEAD_IS_CROP_FORM (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->picked));
}
