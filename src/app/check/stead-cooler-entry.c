/* stead-cooler-entry.c - where the air of one cooler is typed, or taken from a logger's table.
 *
 * An odd number is asked about before it is kept: 4 in a cooler is 4 °C.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-cooler-entry.h"
#include "app/check/stead-shown-act.h"

#include "app/make/stead-make-parts.h"
#include "app/stead-draft.h"
#include "app/stead-field.h"
#include "app/stead-import-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

#define AIR_KIND "air_temp"

/* A number, a time. */
#define FIELD_CHARS 8

struct _SteadCoolerEntry
{
  GtkWidget                  parent_instance;

  SteadDesk                 *desk;
  SteadPersonPick           *person;
  gint64                     place_id;
  char                      *name;
  const SteadPlaceAirAnswer *air;         /* (nullable): as last shown */

  SteadField                *shown, *at;
  GtkWidget                 *ask, *as_typed, *otherwise;
  GtkLabel                  *question;
  const char                *other;       /* (nullable): the scale that fits better */
  const char                *scale;       /* (nullable): what was answered */
  gboolean                   confirmed;
  GtkWidget                 *correcting;
  GtkLabel                  *corrects;
  gint64                     wrong_id;    /* what is recorded next corrects this reading; 0: none */
};

G_DEFINE_FINAL_TYPE (SteadCoolerEntry, stead_cooler_entry, GTK_TYPE_WIDGET)

/* --- reading ------------------------------------------------------------------------------ */

/* The thermometer that hangs there, or the only one of its kind. */
static gint64
instrument_of (SteadCoolerEntry *self)
{
  g_autoptr(GPtrArray) all = stead_instrument_repo_list (stead_desk_get_store (self->desk), FALSE, NULL);
  gint64 only = 0;
  guint n = 0;

  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      const SteadInstrument *instrument = all->pdata[i];

      if (instrument->kind != STEAD_INSTRUMENT_AIR)
        continue;
      if (instrument->place_id == self->place_id)
        return instrument->id;
      if (instrument->place_id == 0)
        {
          only = instrument->id;
          n++;
        }
    }
  return n == 1 ? only : 0;
}

static gboolean
read_value (SteadCoolerEntry  *self,
            double            *out_value,
            const char       **out_unit,
            GError           **error)
{
  const SteadUnit *usual = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, stead_desk_get_farm (self->desk)->units);
  const SteadUnit *unit = NULL;
  double base;

  if (!stead_quantity_parse (stead_field_get_text (self->shown), STEAD_DIMENSION_TEMPERATURE, usual, &base, &unit, error))
    return FALSE;
  *out_value = stead_quantity_from_base (base, unit);
  *out_unit = self->scale != NULL ? self->scale : g_str_equal (unit->id, "degC") ? "C" : "F";
  return TRUE;
}

static gboolean
read_time (SteadCoolerEntry *self,
           SteadStore       *store,
           gint64           *out_at)
{
  g_autoptr(GError) error = NULL;

  *out_at = self->wrong_id != 0 ? STEAD_TIME_NONE : stead_time_now (store);
  if (stead_field_is_empty (self->at)
      || stead_make_read_clock (stead_field_get_text (self->at), stead_store_get_today (store), out_at, &error))
    return TRUE;
  stead_field_set_error (self->at, error->message);
  gtk_widget_grab_focus (GTK_WIDGET (self->at));
  return FALSE;
}

static void
ask_about (SteadCoolerEntry        *self,
           const SteadCheckVerdict *verdict)
{
  if (verdict->as_typed == NULL)
    {
      stead_field_set_error (self->shown, verdict->question);
      return;
    }
  self->other = g_strcmp0 (verdict->judged.other_unit, "C") == 0 ? "C" : "F";
  stead_make_say (self->question, verdict->question, FALSE);
  gtk_button_set_label (GTK_BUTTON (self->as_typed), verdict->as_typed);
  gtk_button_set_label (GTK_BUTTON (self->otherwise), verdict->otherwise);
  stead_ui_name (self->as_typed, verdict->as_typed);
  stead_ui_name (self->otherwise, verdict->otherwise);
  gtk_widget_show (self->ask);
  gtk_widget_grab_focus (self->otherwise);
}

/* Whether the number is to be kept as it is. */
static gboolean
is_plain (SteadCoolerEntry *self,
          double            value,
          const char       *unit)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckVerdict) verdict = stead_place_air_answer_judge (self->air, value, unit, self->confirmed, &error);

  if (verdict == NULL)
    stead_field_set_error (self->shown, error->message);
  else if (verdict->question != NULL)
    ask_about (self, verdict);
  return verdict != NULL && verdict->question == NULL;
}

static void
keep (SteadCoolerEntry *self,
      SteadShown       *shown)
{
  /* Translators: a step that can be undone; the name of a cooler follows. */
  g_autofree char *read = g_strdup_printf (_("the air of “%s”"), self->name);
  /* Translators: a step that can be undone; the name of a cooler follows. */
  g_autofree char *correct = g_strdup_printf (_("the correction of “%s”"), self->name);
  gboolean corrects = self->wrong_id != 0;
  g_autoptr(GError) error = NULL;

  shown->corrects_id = self->wrong_id;
  if (!stead_desk_act (self->desk, corrects ? correct : read, stead_shown_act, shown, &error))
    {
      stead_field_set_error (self->shown, error->message);
      return;
    }
  stead_cooler_entry_correct (self, 0, NULL);
  stead_field_set_text (self->shown, "");
  stead_field_set_text (self->at, "");
}

static void
read_cb (SteadCoolerEntry *self)
{
  SteadShown shown = { .place_id = self->place_id, .held_s = NAN, .kind = (char *) AIR_KIND,
                       .person_id = stead_person_pick_get (self->person) };
  g_autoptr(GError) error = NULL;
  const char *unit = NULL;
  double value = NAN;

  if (self->air == NULL)
    return;
  if (stead_field_is_empty (self->shown))
    stead_field_set_error (self->shown, _("Enter what the thermometer in it shows."));
  else if (!read_value (self, &value, &unit, &error))
    stead_field_set_error (self->shown, error->message);
  else if (read_time (self, stead_desk_get_store (self->desk), &shown.at) && is_plain (self, value, unit))
    {
      shown.scale = unit[0];
      shown.value = shown.scale == 'F' ? (value - 32) / 1.8 : value;
      shown.instrument_id = instrument_of (self);
      keep (self, &shown);
    }
}

static void
as_typed_cb (SteadCoolerEntry *self)
{
  self->confirmed = TRUE;
  read_cb (self);
}

static void
otherwise_cb (SteadCoolerEntry *self)
{
  self->scale = self->other;
  as_typed_cb (self);
}

/* Another number is another question. */
static void
changed_cb (SteadCoolerEntry *self)
{
  self->confirmed = FALSE;
  self->scale = NULL;
  gtk_widget_hide (self->ask);
}

static void
import_cb (SteadCoolerEntry *self)
{
  stead_import_dialog_show (GTK_WIDGET (self), self->desk, STEAD_IMPORT_COOLER, self->place_id);
}

static void
correct_nothing_cb (SteadCoolerEntry *self)
{
  stead_cooler_entry_correct (self, 0, NULL);
}

void
stead_cooler_entry_correct (SteadCoolerEntry *self,
                            gint64            id,
                            const char       *text)
{
  /* Translators: a reading: "52 °F on November 3, 7:40 AM". */
  g_autofree char *words = text != NULL ? g_strdup_printf (_("Enter what it should be instead of %s. The wrong one stays beside "
                                                             "it."), text) : NULL;

  g_return_if_fail (STEAD_IS_COOLER_ENTRY (self));

  self->wrong_id = id;
  stead_make_say (self->corrects, words, FALSE);
  gtk_widget_set_visible (self->correcting, id != 0);
  g_object_set (self->at, "hint", id != 0 ? _("as it was") : _("now"), NULL);
  stead_field_set_error (self->shown, NULL);
  if (id != 0)
    gtk_widget_grab_focus (GTK_WIDGET (self->shown));
}

void
stead_cooler_entry_show (SteadCoolerEntry          *self,
                         const SteadPlaceAirAnswer *air)
{
  g_return_if_fail (STEAD_IS_COOLER_ENTRY (self));
  self->air = air;
}

/* --- the object --------------------------------------------------------------------------- */

static GtkWidget *
make_ask (SteadCoolerEntry *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->ask = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->question = GTK_LABEL (stead_make_label ("", "caution"));
  self->as_typed = gtk_button_new ();
  self->otherwise = gtk_button_new ();
  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  g_signal_connect_swapped (self->as_typed, "clicked", G_CALLBACK (as_typed_cb), self);
  g_signal_connect_swapped (self->otherwise, "clicked", G_CALLBACK (otherwise_cb), self);
  gtk_box_append (GTK_BOX (row), self->otherwise);
  gtk_box_append (GTK_BOX (row), self->as_typed);
  gtk_box_append (GTK_BOX (self->ask), GTK_WIDGET (self->question));
  gtk_box_append (GTK_BOX (self->ask), row);
  gtk_widget_hide (self->ask);
  return self->ask;
}

static GtkWidget *
make_correcting (SteadCoolerEntry *self)
{
  GtkWidget *nothing = gtk_button_new_with_label (_("Correct nothing"));
  /* Translators: the name of a cooler. */
  g_autofree char *name = g_strdup_printf (_("Correct nothing of %s"), self->name);

  self->correcting = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->corrects = GTK_LABEL (stead_make_label ("", "caution"));
  gtk_widget_add_css_class (nothing, "link");
  gtk_widget_set_halign (nothing, GTK_ALIGN_START);
  stead_ui_name (nothing, name);
  g_signal_connect_swapped (nothing, "clicked", G_CALLBACK (correct_nothing_cb), self);
  gtk_box_append (GTK_BOX (self->correcting), GTK_WIDGET (self->corrects));
  gtk_box_append (GTK_BOX (self->correcting), nothing);
  gtk_widget_hide (self->correcting);
  return self->correcting;
}

/* Beside the fields, and as high as they are: an empty line stands over the buttons. */
static GtkWidget *
make_buttons (SteadCoolerEntry *self)
{
  GtkWidget *press = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *save = gtk_button_new_with_label (_("Record reading"));
  GtkWidget *import = gtk_button_new_with_label (_("From a logger (CSV)…"));
  /* Translators: the name of a cooler. */
  g_autofree char *record = g_strdup_printf (_("Record the reading of %s"), self->name);
  g_autofree char *take = g_strdup_printf (_("Take a logger's readings of %s from a table"), self->name);

  stead_ui_name (save, record);
  stead_ui_name (import, take);
  g_signal_connect_swapped (save, "clicked", G_CALLBACK (read_cb), self);
  g_signal_connect_swapped (import, "clicked", G_CALLBACK (import_cb), self);
  gtk_box_append (GTK_BOX (row), save);
  gtk_box_append (GTK_BOX (row), import);
  gtk_box_append (GTK_BOX (press), gtk_label_new (NULL));
  gtk_box_append (GTK_BOX (press), row);
  gtk_widget_set_valign (press, GTK_ALIGN_START);
  return press;
}

static SteadField *
add_field (SteadCoolerEntry *self,
           GtkWidget        *box,
           const char       *label)
{
  GtkWidget *field = stead_field_new (label, STEAD_FIELD_TEXT);

  stead_field_set_width (STEAD_FIELD (field), FIELD_CHARS);
  gtk_widget_set_hexpand (field, FALSE);
  g_signal_connect_swapped (field, "activate", G_CALLBACK (read_cb), self);
  gtk_box_append (GTK_BOX (box), field);
  return STEAD_FIELD (field);
}

static void
make_parts (SteadCoolerEntry *self)
{
  GtkWidget *whole = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, stead_desk_get_farm (self->desk)->units);
  /* Translators: the name of a cooler, a unit: "Air of Refrigerator, °F". */
  g_autofree char *label = g_strdup_printf (_("Air of %s, %s"), self->name, stead_unit_symbol (unit));
  /* Translators: the name of a cooler. */
  g_autofree char *at = g_strdup_printf (_("Time at %s"), self->name);

  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  self->shown = add_field (self, row, label);
  self->at = add_field (self, row, at);
  g_object_set (self->at, "hint", _("now"), NULL);
  g_signal_connect_swapped (self->shown, "changed", G_CALLBACK (changed_cb), self);
  gtk_box_append (GTK_BOX (row), make_buttons (self));
  gtk_box_append (GTK_BOX (whole), make_correcting (self));
  gtk_box_append (GTK_BOX (whole), row);
  gtk_box_append (GTK_BOX (whole), make_ask (self));
  gtk_widget_set_parent (whole, GTK_WIDGET (self));
}

static void
stead_cooler_entry_init (SteadCoolerEntry *self)
{
}

static void
stead_cooler_entry_dispose (GObject *object)
{
  SteadCoolerEntry *self = STEAD_COOLER_ENTRY (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_pointer (&self->name, g_free);
  g_clear_object (&self->person);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_cooler_entry_parent_class)->dispose (object);
}

static void
stead_cooler_entry_class_init (SteadCoolerEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_cooler_entry_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

GtkWidget *
stead_cooler_entry_new (SteadDesk       *desk,
                        SteadPersonPick *person,
                        gint64           place_id,
                        const char      *name)
{
  SteadCoolerEntry *self = g_object_new (STEAD_TYPE_COOLER_ENTRY, NULL);

  self->desk = g_object_ref (desk);
  self->person = g_object_ref (person);
  self->place_id = place_id;
  self->name = g_strdup (name);
  make_parts (self);
  stead_draft_watch (GTK_WIDGET (self), (GtkWidget *[]) { GTK_WIDGET (self->shown), GTK_WIDGET (self->at) }, 2);
  stead_draft_name (GTK_WIDGET (self), name);
  return GTK_WIDGET (self);
}
