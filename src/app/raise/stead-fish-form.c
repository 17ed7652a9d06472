/* stead-fish-form.c - the form of a day of fish: feed, warmth of the water, fish lost.
 *
 * What to feed by the table stands under the field of the feed.  What the farm file
 * would refuse is told at the field that breaks the rule: the entry is checked as it
 * grows, one field after the other, and the one whose number made it fail is at fault.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-fish-form.h"

#include "answer/stead-fish-text.h"
#include "app/stead-person-pick.h"
#include "app/stead-draft.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-item-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-fish-form.ui")

struct _SteadFishForm
{
  GtkWidget        parent_instance;

  SteadDesk       *desk;
  gint64           fish_id;
  SteadDay         today;        /* for which the day was proposed */

  GtkLabel        *form_title, *feed_hint, *error;
  SteadField      *day, *feed, *water, *dead, *taken, *reason, *note;
  GtkCheckButton  *refused;
  SteadPersonPick *person;
};

G_DEFINE_FINAL_TYPE (SteadFishForm, stead_fish_form, GTK_TYPE_WIDGET)

/* Why is asked only when fish were lost. */
static void
lost_cb (SteadFishForm *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->reason),
                          !stead_field_is_empty (self->dead) || !stead_field_is_empty (self->taken));
}

static char *
text_of (SteadField *field)
{
  return stead_field_is_empty (field) || !gtk_widget_get_visible (GTK_WIDGET (field))
         ? NULL : g_strdup (stead_field_get_text (field));
}

static gboolean
read_fields (SteadFishForm  *self,
             SteadFishEntry *entry)
{
  gint64 dead = 0, taken = 0;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &entry->day);

  good &= stead_field_read_quantity (self->feed, NAN, &entry->feed_kg);
  good &= stead_field_read_quantity (self->water, NAN, &entry->water_c);
  good &= stead_field_read_count (self->dead, 0, &dead);
  good &= stead_field_read_count (self->taken, 0, &taken);
  if (!good)
    return FALSE;
  entry->fish_id = self->fish_id;
  entry->refused = gtk_check_button_get_active (self->refused);
  entry->deaths = (gint32) MIN (dead, G_MAXINT32);
  entry->culled = (gint32) MIN (taken, G_MAXINT32);
  entry->reason = text_of (self->reason);
  entry->note = text_of (self->note);
  entry->person_id = stead_person_pick_get (self->person);
  return TRUE;
}

static gboolean
is_empty (const SteadFishEntry *entry)
{
  return isnan (entry->feed_kg) && isnan (entry->water_c) && entry->deaths == 0 && entry->culled == 0
         && !entry->refused && entry->note == NULL;
}

/* The entry grows field by field; the first one that fails bears the message. */
static gboolean
check_fields (SteadFishForm        *self,
              SteadStore           *store,
              const SteadFishEntry *entry)
{
  g_autoptr(SteadFish) group = stead_fish_repo_get (store, self->fish_id, NULL);
  /* A note, so that the day alone is not an empty entry. */
  SteadFishEntry part = { .fish_id = entry->fish_id, .day = entry->day, .feed_kg = NAN, .water_c = NAN,
                          .note = (char *) "-" };
  SteadField *order[] = { self->day, self->feed, self->water, self->dead, self->taken };
  SteadFishStand stand;

  if (group == NULL || !stead_fish_repo_stand (store, self->fish_id, entry->day, 0, &stand, NULL))
    return TRUE;    /* saving tells why */
  for (gsize i = 0; i < G_N_ELEMENTS (order); i++)
    {
      g_autoptr(GError) error = NULL;

      if (order[i] == self->feed)
        part.feed_kg = entry->feed_kg;
      else if (order[i] == self->water)
        part.water_c = entry->water_c;
      else if (order[i] == self->dead)
        part.deaths = entry->deaths;
      else if (order[i] == self->taken)
        part.culled = entry->culled;
      if (stead_fish_entry_check (&part, group, &stand, stead_store_get_today (store), &error))
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
  return stead_fish_repo_save_entry (store, data, error);
}

static void
empty_fields (SteadFishForm *self)
{
  SteadField *fields[] = { self->feed, self->water, self->dead, self->taken, self->reason, self->note };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    stead_field_set_text (fields[i], "");
  gtk_check_button_set_active (self->refused, FALSE);
  stead_field_show_day (self->day, self->today);
  lost_cb (self);
}

static void
record_cb (SteadFishForm *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  g_autoptr(SteadFishEntry) entry = g_new0 (SteadFishEntry, 1);
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;

  stead_ui_tell (self->error, NULL);
  if (!read_fields (self, entry))
    return;
  if (is_empty (entry))
    {
      stead_field_set_error (self->feed, _("Enter the feed, the water, a lost fish or a note."));
      gtk_widget_grab_focus (GTK_WIDGET (self->feed));
      return;
    }
  if (!check_fields (self, store, entry))
    return;
  step = stead_fish_entry_name (entry, stead_desk_get_farm (self->desk));
  if (!stead_desk_act (self->desk, step, save_act, entry, &error))
    {
      stead_ui_tell (self->error, error->message);
      return;
    }
  empty_fields (self);
  stead_draft_begin (GTK_WIDGET (self));
  stead_fish_form_focus (self);
}

static void
set_units (SteadFishForm   *self,
           SteadStore      *store,
           const SteadFish *group)
{
  SteadUnitSystem units = stead_desk_get_farm (self->desk)->units;
  const SteadUnit *mass = stead_unit_default (STEAD_DIMENSION_MASS, units);
  g_autoptr(SteadItem) item = NULL;

  if (group->batch.feed_item_id != 0)
    item = stead_item_repo_get (store, group->batch.feed_item_id, NULL);
  if (item != NULL && item->unit->dimension == STEAD_DIMENSION_MASS)
    mass = item->unit;
  stead_field_set_unit (self->feed, mass);
  stead_field_set_unit (self->water, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units));
}

static void
show_feed (SteadFishForm         *self,
           const SteadFishAnswer *answer)
{
  g_autofree char *text = answer->alive > 0 ? stead_fish_text_feed (answer) : NULL;

  gtk_label_set_markup (self->feed_hint, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->feed_hint), text != NULL);
}

static void
stead_fish_form_dispose (GObject *object)
{
  SteadFishForm *self = STEAD_FISH_FORM (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_FISH_FORM);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_fish_form_parent_class)->dispose (object);
}

#define BIND(child) gtk_widget_class_bind_template_child (widget_class, SteadFishForm, child)

static void
stead_fish_form_class_init (SteadFishFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PERSON_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_fish_form_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  BIND (form_title);
  BIND (feed_hint);
  BIND (error);
  BIND (day);
  BIND (feed);
  BIND (water);
  BIND (dead);
  BIND (taken);
  BIND (reason);
  BIND (note);
  BIND (refused);
  BIND (person);
  gtk_widget_class_bind_template_callback (widget_class, record_cb);
  gtk_widget_class_bind_template_callback (widget_class, lost_cb);
}

/* One straight edge at the left of all entries. */
static void
share_width (SteadFishForm *self)
{
  g_autoptr(GtkSizeGroup) group = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  SteadField *fields[] = { self->day, self->feed, self->water, self->dead, self->taken, self->reason, self->note };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    stead_field_share_width (fields[i], group);
  stead_person_pick_share_width (self->person, group);
}

static void
watch_typed (SteadFishForm *self)
{
  GtkWidget *parts[] = { GTK_WIDGET (self->feed), GTK_WIDGET (self->water), GTK_WIDGET (self->dead),
                         GTK_WIDGET (self->taken), GTK_WIDGET (self->reason), GTK_WIDGET (self->note),
                         GTK_WIDGET (self->day), GTK_WIDGET (self->refused) };

  stead_draft_watch (GTK_WIDGET (self), parts, G_N_ELEMENTS (parts));
}

static void
stead_fish_form_init (SteadFishForm *self)
{
  self->today = STEAD_DAY_NONE;
  gtk_widget_init_template (GTK_WIDGET (self));
  share_width (self);
  lost_cb (self);
  watch_typed (self);
}

void
stead_fish_form_show (SteadFishForm         *self,
                      SteadDesk             *desk,
                      const SteadFishAnswer *answer)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadDay today = stead_store_get_today (store);
  gint64 id = answer->group->batch.id;
  gboolean same = self->fish_id == id && self->today == today;
  g_autofree char *day = stead_day_format (today, STEAD_DAY_STYLE_LONG);
  /* Translators: a date with its weekday follows */
  g_autofree char *title = g_strdup_printf (_("Today, %s"), day);

  g_return_if_fail (STEAD_IS_FISH_FORM (self));

  g_set_object (&self->desk, desk);
  self->fish_id = id;
  self->today = today;
  gtk_label_set_text (self->form_title, title);
  stead_field_set_today (self->day, today);
  set_units (self, store, answer->group);
  show_feed (self, answer);
  stead_person_pick_fill (self->person, store);
  if (same)
    return;
  stead_draft_turn (GTK_WIDGET (self), id, answer->group->batch.name);
  empty_fields (self);
  stead_draft_begin (GTK_WIDGET (self));
  stead_ui_tell (self->error, NULL);
}

void
stead_fish_form_record (SteadFishForm *self)
{
  g_return_if_fail (STEAD_IS_FISH_FORM (self));
  record_cb (self);
}

void
stead_fish_form_focus (SteadFishForm *self)
{
  g_return_if_fail (STEAD_IS_FISH_FORM (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->feed));
}
