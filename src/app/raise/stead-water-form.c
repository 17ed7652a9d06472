/* stead-water-form.c - the sheet of one water test, judged as it is typed. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-water-form.h"

#include "app/stead-person-pick.h"
#include "app/raise/stead-reading-row.h"
#include "app/stead-draft.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-clock.h"

#define RESOURCE STEAD_UI ("raise/stead-water-form.ui")

struct _SteadWaterForm
{
  GtkWidget        parent_instance;

  SteadDesk       *desk;
  gint64           water_id;
  char            *water_name;
  SteadDay         today;        /* for which the day was proposed */
  SteadWaterScene  scene;        /* what the readings are judged by */

  GtkLabel        *form_title, *error;
  SteadField      *day, *time, *action, *note;
  SteadPersonPick *person;
  GtkBox          *fields, *usual;
  GtkWidget       *record;
  GtkExpander     *expander;
  GtkWidget       *more;
  SteadReadingRow *rows[STEAD_N_READINGS];
};

G_DEFINE_FINAL_TYPE (SteadWaterForm, stead_water_form, GTK_TYPE_WIDGET)

/* Readings of every test; the others open below. */
static gboolean
is_usual (SteadReading reading)
{
  return reading <= STEAD_READING_OXYGEN;
}

/* --- judging as one types ----------------------------------------------------------- */

static void
typed_cb (SteadWaterForm *self)
{
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();
  SteadWaterLine lines[STEAD_N_WATER_MEASURES];

  for (int i = 0; i < STEAD_N_READINGS; i++)
    test->values[i] = stead_reading_row_peek (self->rows[i]);
  stead_water_judge_test (&self->scene, test, lines);
  for (int i = 0; i < STEAD_N_READINGS; i++)
    {
      SteadWaterVerdict verdict;
      g_autofree char *text = stead_water_reading_short (lines, (SteadReading) i, self->scene.units, &verdict);

      stead_reading_row_tell (self->rows[i], text, verdict == STEAD_WATER_WATCH || verdict == STEAD_WATER_ACT);
    }
}

/* --- recording ------------------------------------------------------------------------- */

static gboolean
read_time (SteadWaterForm *self,
           int            *out_minute)
{
  g_autoptr(GError) error = NULL;

  if (stead_minute_parse (stead_field_get_text (self->time), out_minute, &error))
    return TRUE;
  stead_field_set_error (self->time, error->message);
  return FALSE;
}

/* Reads all fields, so that each one that is wrong says so at once. */
static gboolean
read_fields (SteadWaterForm *self,
             SteadWaterTest *test)
{
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &test->day);

  good &= read_time (self, &test->minute);
  for (int i = 0; i < STEAD_N_READINGS; i++)
    if (!stead_reading_row_read (self->rows[i], &test->values[i]))
      {
        if (!is_usual ((SteadReading) i))
          gtk_expander_set_expanded (self->expander, TRUE);
        good = FALSE;
      }
  test->water_id = self->water_id;
  test->person_id = stead_person_pick_get (self->person);
  if (!stead_field_is_empty (self->action))
    test->action = g_strdup (stead_field_get_text (self->action));
  if (!stead_field_is_empty (self->note))
    test->note = g_strdup (stead_field_get_text (self->note));
  return good;
}

/* What the readings break together, told at the one at fault. */
static gboolean
check_test (SteadWaterForm       *self,
            const SteadWaterTest *test)
{
  g_autoptr(GError) error = NULL;
  SteadReading fault;

  if (stead_water_test_check (test, stead_store_get_today (stead_desk_get_store (self->desk)), &fault, &error))
    return TRUE;
  if (fault < STEAD_N_READINGS)
    {
      stead_reading_row_set_error (self->rows[fault], error->message);
      gtk_widget_grab_focus (GTK_WIDGET (self->rows[fault]));
    }
  else
    stead_ui_tell (self->error, error->message);
  return FALSE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_water_test_repo_save (store, data, error);
}

static void
empty_fields (SteadWaterForm *self)
{
  for (int i = 0; i < STEAD_N_READINGS; i++)
    stead_reading_row_clear (self->rows[i]);
  stead_field_set_text (self->time, "");
  stead_field_set_text (self->action, "");
  stead_field_set_text (self->note, "");
  stead_field_show_day (self->day, self->today);
}

static void
record_cb (SteadWaterForm *self)
{
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;

  stead_ui_tell (self->error, NULL);
  if (!read_fields (self, test) || !check_test (self, test))
    return;
  step = stead_water_answer_test_name (test, self->water_name);
  if (!stead_desk_act (self->desk, step, save_act, test, &error))
    {
      stead_ui_tell (self->error, error->message);
      return;
    }
  empty_fields (self);
  stead_draft_begin (GTK_WIDGET (self));
  stead_water_form_focus (self);
}

/* --- the type ----------------------------------------------------------------------------- */

static void
build_rows (SteadWaterForm *self)
{
  g_autoptr(GtkSizeGroup) labels = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  g_autoptr(GtkSizeGroup) units = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  SteadField *fields[] = { self->day, self->time, self->action, self->note };

  self->more = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  for (int i = 0; i < STEAD_N_READINGS; i++)
    {
      GtkWidget *row = stead_reading_row_new ((SteadReading) i);

      self->rows[i] = STEAD_READING_ROW (row);
      stead_reading_row_share_width (self->rows[i], labels, units);
      g_signal_connect_swapped (row, "changed", G_CALLBACK (typed_cb), self);
      g_signal_connect_swapped (row, "activate", G_CALLBACK (record_cb), self);
      gtk_box_append (is_usual ((SteadReading) i) ? self->usual : GTK_BOX (self->more), row);
    }
  stead_ui_expander_set_child (GTK_WIDGET (self->expander), self->more);
  stead_ui_name (GTK_WIDGET (self->expander), gtk_expander_get_label (self->expander));
  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    stead_field_share_width (fields[i], labels);
  stead_person_pick_share_width (self->person, labels);
}

static void
stead_water_form_dispose (GObject *object)
{
  SteadWaterForm *self = STEAD_WATER_FORM (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_WATER_FORM);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  g_clear_pointer (&self->water_name, g_free);
  stead_water_scene_clear (&self->scene);
  G_OBJECT_CLASS (stead_water_form_parent_class)->dispose (object);
}

static void
stead_water_form_class_init (SteadWaterFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PERSON_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_water_form_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, form_title);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, error);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, day);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, time);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, action);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, note);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, person);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, fields);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, usual);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, record);
  gtk_widget_class_bind_template_child (widget_class, SteadWaterForm, expander);
  gtk_widget_class_bind_template_callback (widget_class, record_cb);
}

static void
watch_typed (SteadWaterForm *self)
{
  GtkWidget *parts[STEAD_N_READINGS + 4] = { GTK_WIDGET (self->day), GTK_WIDGET (self->time), GTK_WIDGET (self->action),
                                             GTK_WIDGET (self->note) };

  for (int i = 0; i < STEAD_N_READINGS; i++)
    parts[4 + i] = GTK_WIDGET (self->rows[i]);
  stead_draft_watch (GTK_WIDGET (self), parts, G_N_ELEMENTS (parts));
}

static void
stead_water_form_init (SteadWaterForm *self)
{
  self->today = STEAD_DAY_NONE;
  gtk_widget_init_template (GTK_WIDGET (self));
  build_rows (self);
  watch_typed (self);
}

static void
copy_scene (SteadWaterForm        *self,
            const SteadWaterScene *scene)
{
  stead_water_scene_clear (&self->scene);
  self->scene = *scene;
  self->scene.unknown_species = g_strdup (scene->unknown_species);
}

void
stead_water_form_show (SteadWaterForm         *self,
                       SteadDesk              *desk,
                       const SteadWaterAnswer *answer)
{
  gboolean same;
  g_autofree char *day = NULL;
  g_autofree char *title = NULL;

  g_return_if_fail (STEAD_IS_WATER_FORM (self) && answer != NULL);

  same = self->water_id == answer->water->id && self->today == answer->today;
  day = stead_day_format (answer->today, STEAD_DAY_STYLE_LONG);
  /* Translators: a date with its weekday follows */
  title = g_strdup_printf (_("Today, %s"), day);
  g_set_object (&self->desk, desk);
  self->water_id = answer->water->id;
  self->today = answer->today;
  g_free (self->water_name);
  self->water_name = g_strdup (answer->water->name);
  copy_scene (self, &answer->scene);
  gtk_label_set_text (self->form_title, title);
  stead_field_set_today (self->day, answer->today);
  stead_person_pick_fill (self->person, stead_desk_get_store (desk));
  for (int i = 0; i < STEAD_N_READINGS; i++)
    stead_reading_row_set_units (self->rows[i], answer->farm->units);
  if (!same)
    {
      stead_draft_turn (GTK_WIDGET (self), answer->water->id, answer->water->name);
      empty_fields (self);
      stead_draft_begin (GTK_WIDGET (self));
      stead_ui_tell (self->error, NULL);
    }
  typed_cb (self);
}

void
stead_water_form_focus (SteadWaterForm *self)
{
  g_return_if_fail (STEAD_IS_WATER_FORM (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->rows[STEAD_READING_TEMPERATURE]));
}

void
stead_water_form_add_below (SteadWaterForm *self,
                            GtkWidget      *widget)
{
  g_return_if_fail (STEAD_IS_WATER_FORM (self));
  gtk_box_append (self->fields, widget);
}

void
stead_water_form_set_open (SteadWaterForm *self,
                           gboolean        open)
{
  g_return_if_fail (STEAD_IS_WATER_FORM (self));
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->fields)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      gtk_widget_set_visible (child, open);
      if (child == GTK_WIDGET (self->person))
        break;
    }
  gtk_widget_set_visible (self->record, open);
}
