/* stead-day-form.c - the form of a day: eggs, feed, hens lost.
 *
 * What the farm file would refuse is told at the field that breaks the rule:
 * the entry is checked as it grows, one field after the other, and the field
 * whose number made it fail is the one at fault.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-day-form.h"

#include "answer/stead-flock-answer.h"
#include "app/stead-draft.h"
#include "app/stead-field.h"
#include "app/stead-person-pick.h"
#include "app/stead-ui.h"
#include "store/stead-item-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-day-form.ui")

struct _SteadDayForm
{
  GtkWidget        parent_instance;

  SteadDesk       *desk;
  gint64           flock_id;
  SteadDay         today;        /* for which the day was proposed */

  GtkLabel        *form_title, *error;
  SteadField      *day, *eggs, *cracked, *feed, *lost, *own_reason, *note;
  GtkDropDown     *reason;
  GtkWidget       *reason_row, *reason_label;
  SteadPersonPick *person;
};

G_DEFINE_FINAL_TYPE (SteadDayForm, stead_day_form, GTK_TYPE_WIDGET)

/* What birds are lost to; the last choice is for the person's own words. */
static const char * const reasons[] = {
  N_("not known"), N_("predator"), N_("sickness"), N_("injury or pecking"), N_("heat or cold"), N_("old age"),
  N_("in own words"),
};

#define OWN_REASON (G_N_ELEMENTS (reasons) - 1)

/* Asked only if a bird was lost. */
static void
lost_cb (SteadDayForm *self)
{
  const char *lost = stead_field_get_text (self->lost);
  gboolean asked = lost[0] != '\0' && g_strcmp0 (lost, "0") != 0;

  gtk_widget_set_visible (self->reason_row, asked);
  gtk_widget_set_visible (GTK_WIDGET (self->own_reason),
                          asked && gtk_drop_down_get_selected (self->reason) == OWN_REASON);
}

/* (transfer full) (nullable): in the words of who enters it, as the log shows it */
static char *
read_reason (SteadDayForm *self)
{
  guint chosen = gtk_drop_down_get_selected (self->reason);

  if (chosen == OWN_REASON)
    return stead_field_is_empty (self->own_reason) ? NULL : g_strdup (stead_field_get_text (self->own_reason));
  return chosen == 0 || chosen >= G_N_ELEMENTS (reasons) ? NULL : g_strdup (_(reasons[chosen]));
}

static gboolean
read_fields (SteadDayForm    *self,
             SteadFlockEntry *entry)
{
  gint64 eggs = STEAD_COUNT_NONE, cracked = 0, lost = 0;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &entry->day);

  good &= stead_field_read_count (self->eggs, STEAD_COUNT_NONE, &eggs);
  good &= stead_field_read_count (self->cracked, 0, &cracked);
  good &= stead_field_read_quantity (self->feed, NAN, &entry->feed_kg);
  good &= stead_field_read_count (self->lost, 0, &lost);
  if (!good)
    return FALSE;
  entry->flock_id = self->flock_id;
  entry->eggs = (gint32) MIN (eggs, G_MAXINT32);
  entry->cracked = (gint32) MIN (cracked, G_MAXINT32);
  entry->deaths = (gint32) MIN (lost, G_MAXINT32);
  if (lost > 0)
    entry->reason = read_reason (self);
  if (!stead_field_is_empty (self->note))
    entry->note = g_strdup (stead_field_get_text (self->note));
  entry->person_id = stead_person_pick_get (self->person);
  return TRUE;
}

/* The entry grows field by field; the first one that fails bears the message. */
static gboolean
check_fields (SteadDayForm          *self,
              SteadStore            *store,
              const SteadFlockEntry *entry)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (store, self->flock_id, NULL);
  SteadFlockEntry part = { .flock_id = entry->flock_id, .day = entry->day, .eggs = 0, .feed_kg = NAN };
  gint64 alive = stead_flock_repo_alive (store, self->flock_id, entry->day, NULL);
  SteadField *order[] = { self->day, self->eggs, self->cracked, self->lost, self->feed };

  if (flock == NULL)
    return TRUE;    /* saving tells why */
  for (gsize i = 0; i < G_N_ELEMENTS (order); i++)
    {
      g_autoptr(GError) error = NULL;

      if (order[i] == self->eggs && entry->eggs != STEAD_COUNT_NONE)
        part.eggs = entry->eggs;
      else if (order[i] == self->cracked)
        part.cracked = entry->cracked;
      else if (order[i] == self->lost)
        part.deaths = entry->deaths;
      else if (order[i] == self->feed)
        part.feed_kg = entry->feed_kg;
      if (stead_flock_entry_check (&part, flock, alive, stead_store_get_today (store), &error))
        continue;
      stead_field_set_error (order[i], error->message);
      gtk_widget_grab_focus (GTK_WIDGET (order[i]));
      return FALSE;
    }
  return TRUE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_flock_repo_save_entry (store, data, error);
}

static void
empty_fields (SteadDayForm *self)
{
  SteadField *fields[] = { self->eggs, self->cracked, self->feed, self->lost, self->own_reason, self->note };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    stead_field_set_text (fields[i], "");
  gtk_drop_down_set_selected (self->reason, 0);
  lost_cb (self);
  stead_field_show_day (self->day, self->today);
}

static void
record_cb (SteadDayForm *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  g_autoptr(SteadFlockEntry) entry = g_new0 (SteadFlockEntry, 1);
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;

  stead_ui_tell (self->error, NULL);
  if (!read_fields (self, entry))
    return;
  if (entry->eggs == STEAD_COUNT_NONE && isnan (entry->feed_kg) && entry->deaths == 0 && entry->note == NULL)
    {
      stead_field_set_error (self->eggs, _("Enter the eggs, the feed, a lost bird or a note."));
      gtk_widget_grab_focus (GTK_WIDGET (self->eggs));
      return;
    }
  if (!check_fields (self, store, entry))
    return;
  step = stead_flock_answer_entry_name (entry, stead_desk_get_farm (self->desk));
  if (!stead_desk_act (self->desk, step, save_act, entry, &error))
    {
      stead_ui_tell (self->error, error->message);
      return;
    }
  empty_fields (self);
  stead_draft_begin (GTK_WIDGET (self));
  stead_day_form_focus (self);
}

static void
set_feed_unit (SteadDayForm     *self,
               SteadStore       *store,
               const SteadFlock *flock)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, stead_desk_get_farm (self->desk)->units);
  g_autoptr(SteadItem) item = NULL;

  if (flock->feed_item_id != 0)
    item = stead_item_repo_get (store, flock->feed_item_id, NULL);
  if (item != NULL && item->unit->dimension == STEAD_DIMENSION_MASS)
    unit = item->unit;
  stead_field_set_unit (self->feed, unit);
}

static void
stead_day_form_dispose (GObject *object)
{
  SteadDayForm *self = STEAD_DAY_FORM (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_DAY_FORM);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_day_form_parent_class)->dispose (object);
}

#define BIND(child) gtk_widget_class_bind_template_child (widget_class, SteadDayForm, child)

static void
stead_day_form_class_init (SteadDayFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PERSON_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_day_form_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  BIND (form_title);
  BIND (error);
  BIND (day);
  BIND (eggs);
  BIND (cracked);
  BIND (feed);
  BIND (lost);
  BIND (note);
  BIND (person);
  BIND (own_reason);
  BIND (reason);
  BIND (reason_row);
  BIND (reason_label);
  gtk_widget_class_bind_template_callback (widget_class, lost_cb);
  gtk_widget_class_bind_template_callback (widget_class, record_cb);
}

/* One straight edge at the left of all entries. */
static void
share_width (SteadDayForm *self)
{
  g_autoptr(GtkSizeGroup) group = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  SteadField *fields[] = { self->day, self->eggs, self->cracked, self->feed, self->lost, self->own_reason, self->note };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    stead_field_share_width (fields[i], group);
  gtk_size_group_add_widget (group, self->reason_label);
  stead_person_pick_share_width (self->person, group);
}

static void
fill_reasons (SteadDayForm *self)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (reasons); i++)
    gtk_string_list_append (names, _(reasons[i]));
  gtk_drop_down_set_model (self->reason, G_LIST_MODEL (names));
}

static void
watch_typed (SteadDayForm *self)
{
  GtkWidget *parts[] = { GTK_WIDGET (self->eggs), GTK_WIDGET (self->cracked), GTK_WIDGET (self->feed),
                         GTK_WIDGET (self->lost), GTK_WIDGET (self->own_reason), GTK_WIDGET (self->note),
                         GTK_WIDGET (self->day) };

  stead_draft_watch (GTK_WIDGET (self), parts, G_N_ELEMENTS (parts));
}

static void
stead_day_form_init (SteadDayForm *self)
{
  self->today = STEAD_DAY_NONE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_reasons (self);
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  share_width (self);
  watch_typed (self);
}

void
stead_day_form_show (SteadDayForm     *self,
                     SteadDesk        *desk,
                     const SteadFlock *flock)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadDay today = stead_store_get_today (store);
  gboolean same = self->flock_id == flock->id && self->today == today;
  g_autofree char *day = stead_day_format (today, STEAD_DAY_STYLE_LONG);
  /* Translators: a date with its weekday follows */
  g_autofree char *title = g_strdup_printf (_("Today, %s"), day);

  g_return_if_fail (STEAD_IS_DAY_FORM (self));

  g_set_object (&self->desk, desk);
  self->flock_id = flock->id;
  self->today = today;
  gtk_label_set_text (self->form_title, title);
  g_object_set (self->lost, "label", flock->species == STEAD_SPECIES_HEN ? _("Hens found dead") : _("Birds found dead"),
                NULL);
  stead_field_set_today (self->day, today);
  set_feed_unit (self, store, flock);
  stead_person_pick_fill (self->person, store);
  if (same)
    return;
  stead_draft_turn (GTK_WIDGET (self), flock->id, flock->name);
  empty_fields (self);
  stead_draft_begin (GTK_WIDGET (self));
  stead_ui_tell (self->error, NULL);
}

void
stead_day_form_focus (SteadDayForm *self)
{
  g_return_if_fail (STEAD_IS_DAY_FORM (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->eggs));
}
