/* stead-flock-dialog.c - the plan of a flock: new, or changed.
 *
 * Every rule that the farm file holds is told here first, at the field where
 * it is broken; what the file still refuses, the frame tells above the buttons.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-flock-dialog.h"

#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-farm-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-store-watch.h"

#define RESOURCE STEAD_UI ("raise/stead-flock-dialog.ui")

/* Proposed for a new flock of brown hens; each is a field and can be changed.
 * Laid to 78 weeks of age: common practice, no source. */
#define DEFAULT_AGE_WEEKS 17
#define DEFAULT_END_WEEKS 78
#define DEFAULT_BEDDING_DAYS 28
#define DEFAULT_CARE_MINUTES 20

struct _SteadFlockDialog
{
  SteadDialog      parent_instance;

  SteadFlock      *flock;      /* as on file, or the proposal */
  GPtrArray       *feeds;      /* of SteadItem: what the drop-down offers after "not said" */

  SteadField      *name, *strain, *housed, *age, *birds, *eggs_expected, *cost, *salvage,
                  *bedding, *care, *ended, *place, *note, *lay_began, *floor_area, *nests, *roost, *run, *light;
  GtkCheckButton  *gift, *reared;
  GtkDropDown     *feed, *species;
};

G_DEFINE_FINAL_TYPE (SteadFlockDialog, stead_flock_dialog, STEAD_TYPE_DIALOG)

/* What reaches from one field to another; the field itself checks its own form. */
static gboolean
check_together (SteadFlockDialog *self,
                const SteadFlock *flock)
{
  if (flock->birds < 1)
    {
      stead_field_set_error (self->birds, _("Enter at least one bird."));
      return FALSE;
    }
  if (!(flock->eggs_expected > 0))
    {
      stead_field_set_error (self->eggs_expected, _("Enter more than zero eggs, such as 330."));
      return FALSE;
    }
  if (!flock->reared && flock->salvage_cents > flock->birds_cost_cents)
    {
      stead_field_set_error (self->salvage, _("The birds cannot be worth more at the end than they cost."));
      return FALSE;
    }
  if (flock->ended_on != STEAD_DAY_NONE && flock->ended_on < flock->housed_on)
    {
      stead_field_set_error (self->ended, _("The last day cannot come before the day they moved in."));
      return FALSE;
    }
  if (flock->lay_began_on != STEAD_DAY_NONE && flock->lay_began_on < flock->hatched_on)
    {
      stead_field_set_error (self->lay_began, _("They cannot lay before they hatched. Check the two days."));
      return FALSE;
    }
  if (flock->light_hours < 0 || flock->light_hours > 24)
    {
      stead_field_set_error (self->light, _("A day has 0 to 24 hours of light."));
      return FALSE;
    }
  return TRUE;
}

/* What the house has; all of it may be left empty. */
static gboolean
read_house (SteadFlockDialog *self,
            SteadFlock       *flock)
{
  gint64 nests = STEAD_COUNT_NONE;
  gboolean good = stead_field_read_day (self->lay_began, STEAD_DAY_NONE, &flock->lay_began_on);

  good &= stead_field_read_count (self->nests, STEAD_COUNT_NONE, &nests);
  good &= stead_field_read_quantity (self->roost, NAN, &flock->roost_m);
  good &= stead_field_read_quantity (self->run, NAN, &flock->run_m2);
  good &= stead_field_read_number (self->light, NAN, &flock->light_hours);
  flock->nests = (int) MIN (nests, G_MAXINT);
  flock->reared = gtk_check_button_get_active (self->reared);
  flock->species = (SteadSpecies) MIN (gtk_drop_down_get_selected (self->species), STEAD_SPECIES_OTHER);
  return good;
}

/* Reads all fields, so that each one that is wrong says so at once. */
static gboolean
read_fields (SteadFlockDialog *self,
             SteadFlock       *flock)
{
  const char *name = NULL;
  double age = 0;
  gint64 bedding = 0;
  guint feed = gtk_drop_down_get_selected (self->feed);
  gboolean good = stead_field_read_text (self->name, &name);

  good &= stead_field_read_day (self->housed, STEAD_DAY_NONE, &flock->housed_on);
  good &= stead_field_read_number (self->age, 0, &age);
  good &= stead_field_read_count (self->birds, 0, &flock->birds);
  good &= stead_field_read_number (self->eggs_expected, 0, &flock->eggs_expected);
  good &= stead_field_read_money (self->cost, 0, &flock->birds_cost_cents);
  good &= stead_field_read_money (self->salvage, 0, &flock->salvage_cents);
  good &= stead_field_read_count (self->bedding, 0, &bedding);
  good &= stead_field_read_number (self->care, 0, &flock->care_minutes_day);
  good &= stead_field_read_day (self->ended, STEAD_DAY_NONE, &flock->ended_on);
  good &= read_house (self, flock);
  if (!good)
    return FALSE;
  if (!(age >= 0 && age <= 300))
    {
      stead_field_set_error (self->age, _("Enter an age of 0 to 300 weeks."));
      return FALSE;
    }
  flock->hatched_on = flock->housed_on - (SteadDay) lround (age * 7);
  flock->bedding_days = (int) MIN (bedding, 3650);
  flock->birds_are_gift = gtk_check_button_get_active (self->gift);
  flock->feed_item_id = feed == 0 || feed == GTK_INVALID_LIST_POSITION
                        ? 0 : ((SteadItem *) self->feeds->pdata[feed - 1])->id;
  g_free (flock->name);
  flock->name = g_strstrip (g_strdup (name));
  g_free (flock->strain);
  flock->strain = g_strdup (stead_field_get_text (self->strain));
  g_free (flock->note);
  flock->note = g_strdup (stead_field_get_text (self->note));
  return check_together (self, flock);
}

/* What is saved: the flock, the name of its place as it was typed, and its floor. */
typedef struct
{
  SteadFlock *flock;
  const char *place;
  double      floor_m2;   /* NAN: not said */
} Saving;

/* The floor belongs to the place, which other batches may share. */
static gboolean
save_floor (SteadStore       *store,
            SteadPlaceFacts  *place,
            double            floor_m2,
            GError          **error)
{
  if (isnan (floor_m2) || place->area_m2 == floor_m2)
    return TRUE;
  place->area_m2 = floor_m2;
  return stead_place_repo_save (store, place, error);
}

/* The place of that name, which is made if the farm does not have it yet; 0: no name. */
static gboolean
find_place (SteadStore  *store,
            Saving      *saving,
            GError     **error)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, error);
  g_autofree char *trimmed = g_strstrip (g_strdup (saving->place));
  g_autoptr(SteadPlaceFacts) made = NULL;
  gint64 *place_id = &saving->flock->place_id;

  if (places == NULL)
    return FALSE;
  *place_id = 0;
  if (trimmed[0] == '\0')
    return TRUE;
  for (guint i = 0; i < places->len; i++)
    {
      SteadPlaceFacts *place = places->pdata[i];

      if (g_strcmp0 (place->name, trimmed) != 0)
        continue;
      *place_id = place->id;
      return save_floor (store, place, saving->floor_m2, error);
    }
  made = g_new0 (SteadPlaceFacts, 1);
  made->name = g_steal_pointer (&trimmed);
  made->kind = STEAD_PLACE_COOP;
  made->area_m2 = saving->floor_m2;
  if (!stead_place_repo_save (store, made, error))
    return FALSE;
  *place_id = made->id;
  return TRUE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  Saving *saving = data;

  stead_store_watch_id (store, &saving->flock->id);
  return find_place (store, saving, error)
         && stead_flock_repo_save (store, saving->flock, error);
}

static gboolean
stead_flock_dialog_save (SteadDialog *dialog,
                         GError     **error)
{
  SteadFlockDialog *self = STEAD_FLOCK_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  gboolean is_new = self->flock->id == 0;
  Saving saving = { self->flock, stead_field_get_text (self->place), NAN };
  g_autofree char *step = NULL;

  if (!read_fields (self, self->flock) || !stead_field_read_quantity (self->floor_area, NAN, &saving.floor_m2))
    return FALSE;
  if (!isnan (saving.floor_m2) && stead_field_is_empty (self->place))
    {
      stead_field_set_error (self->place, _("Enter the name of the house that has this floor."));
      return FALSE;
    }
  step = g_strdup_printf (is_new ? _("new flock %s") : _("changes to flock %s"), self->flock->name);
  if (!stead_desk_act (desk, step, save_act, &saving, error))
    return FALSE;
  if (is_new)
    stead_desk_jump (desk, STEAD_TARGET_FLOCK, self->flock->id);
  return TRUE;
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_flock_repo_delete (store, ((SteadFlock *) data)->id, error);
}

static gboolean
stead_flock_dialog_remove (SteadDialog *dialog,
                           GError     **error)
{
  SteadFlockDialog *self = STEAD_FLOCK_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting flock %s"), self->flock->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->flock, error);
}

/* The feeds of the store room, after the choice of saying none. */
static void
fill_feeds (SteadFlockDialog *self,
            SteadStore       *store)
{
  g_autoptr(GPtrArray) items = stead_item_repo_list (store, NULL);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  guint chosen = 0;

  gtk_string_list_append (names, _("Not said"));
  for (guint i = 0; items != NULL && i < items->len; i++)
    {
      SteadItem *item = items->pdata[i];

      if (item->kind != STEAD_ITEM_FEED)
        continue;
      gtk_string_list_append (names, item->name);
      g_ptr_array_add (self->feeds, g_steal_pointer (&items->pdata[i]));
      if (item->id == self->flock->feed_item_id || (self->flock->id == 0 && self->feeds->len == 1))
        chosen = self->feeds->len;
    }
  gtk_drop_down_set_model (self->feed, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->feed, chosen);
}

static void
propose (SteadFlock *flock,
         SteadDay    today)
{
  flock->housed_on = today;
  flock->hatched_on = today - 7 * DEFAULT_AGE_WEEKS;
  flock->eggs_expected = rint (stead_lay_curve_eggs (&flock->curve, DEFAULT_AGE_WEEKS, DEFAULT_END_WEEKS));
  flock->bedding_days = DEFAULT_BEDDING_DAYS;
  flock->care_minutes_day = DEFAULT_CARE_MINUTES;
}

static void
show_place (SteadFlockDialog *self,
            SteadStore       *store)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, NULL);

  for (guint i = 0; places != NULL && i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];

      if (place->id != self->flock->place_id)
        continue;
      stead_field_set_text (self->place, place->name);
      if (!isnan (place->area_m2))
        stead_field_show_quantity (self->floor_area, place->area_m2);
    }
}

static void
show_house (SteadFlockDialog *self)
{
  const SteadFlock *flock = self->flock;

  gtk_drop_down_set_selected (self->species, flock->species);
  gtk_check_button_set_active (self->reared, flock->reared);
  if (flock->lay_began_on != STEAD_DAY_NONE)
    stead_field_show_day (self->lay_began, flock->lay_began_on);
  if (flock->nests != STEAD_COUNT_NONE)
    stead_field_show_count (self->nests, flock->nests);
  if (!isnan (flock->roost_m))
    stead_field_show_quantity (self->roost, flock->roost_m);
  if (!isnan (flock->run_m2))
    stead_field_show_quantity (self->run, flock->run_m2);
  if (!isnan (flock->light_hours))
    stead_field_show_number (self->light, flock->light_hours);
}

static void
show_flock (SteadFlockDialog *self)
{
  const SteadFlock *flock = self->flock;

  stead_field_set_text (self->name, flock->name != NULL ? flock->name : "");
  stead_field_set_text (self->strain, flock->strain != NULL ? flock->strain : "");
  stead_field_set_text (self->note, flock->note != NULL ? flock->note : "");
  stead_field_show_day (self->housed, flock->housed_on);
  stead_field_show_number (self->age, stead_age_weeks (flock->hatched_on, flock->housed_on));
  stead_field_show_number (self->eggs_expected, flock->eggs_expected);
  stead_field_show_number (self->care, flock->care_minutes_day);
  stead_field_show_count (self->bedding, flock->bedding_days);
  if (flock->ended_on != STEAD_DAY_NONE)
    stead_field_show_day (self->ended, flock->ended_on);
  gtk_check_button_set_active (self->gift, flock->birds_are_gift);
  show_house (self);
  if (flock->id == 0)
    return;
  stead_field_show_count (self->birds, flock->birds);
  stead_field_show_money (self->cost, flock->birds_cost_cents);
  stead_field_show_money (self->salvage, flock->salvage_cents);
}

static void
prepare_fields (SteadFlockDialog *self,
                SteadDesk        *desk)
{
  const SteadFarm *farm = stead_desk_get_farm (desk);
  SteadDay today = stead_store_get_today (stead_desk_get_store (desk));

  stead_field_set_currency (self->cost, farm->currency);
  stead_field_set_currency (self->salvage, farm->currency);
  stead_field_set_today (self->housed, today);
  stead_field_set_today (self->ended, today);
  stead_field_set_today (self->lay_began, today);
  stead_field_set_unit (self->floor_area, stead_unit_default (STEAD_DIMENSION_AREA, farm->units));
  stead_field_set_unit (self->run, stead_unit_default (STEAD_DIMENSION_AREA, farm->units));
  stead_field_set_unit (self->roost, stead_unit_default (STEAD_DIMENSION_LENGTH, farm->units));
}

static void
stead_flock_dialog_dispose (GObject *object)
{
  SteadFlockDialog *self = STEAD_FLOCK_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_FLOCK_DIALOG);
  g_clear_pointer (&self->flock, stead_flock_free);
  g_clear_pointer (&self->feeds, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_flock_dialog_parent_class)->dispose (object);
}

static void
stead_flock_dialog_class_init (SteadFlockDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_flock_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_flock_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_flock_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, strain);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, housed);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, age);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, birds);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, eggs_expected);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, cost);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, salvage);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, bedding);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, care);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, ended);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, place);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, gift);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, feed);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, species);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, reared);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, lay_began);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, floor_area);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, nests);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, roost);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, run);
  gtk_widget_class_bind_template_child (widget_class, SteadFlockDialog, light);
}

/* In the order of SteadSpecies. */
static void
fill_species (SteadFlockDialog *self)
{
  const char *names[] = { _("Hens"), _("Ducks"), _("Quail"), _("Other birds"), NULL };
  g_autoptr(GtkStringList) list = gtk_string_list_new (names);

  gtk_drop_down_set_model (self->species, G_LIST_MODEL (list));
}

static void
stead_flock_dialog_init (SteadFlockDialog *self)
{
  self->feeds = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_item_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_species (self);
}

void
stead_flock_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     flock_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadFlockDialog *self;
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(GError) error = NULL;

  g_return_if_fail (store != NULL);

  flock = flock_id > 0 ? stead_flock_repo_get (store, flock_id, &error) : stead_flock_new ();
  if (flock == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  if (flock_id == 0)
    propose (flock, stead_store_get_today (store));
  self = g_object_new (STEAD_TYPE_FLOCK_DIALOG, "title", flock_id > 0 ? _("Change the flock") : _("New flock"),
                       "delete-label", flock_id > 0 ? _("Delete the flock and its log") : NULL, NULL);
  self->flock = g_steal_pointer (&flock);
  prepare_fields (self, desk);
  fill_feeds (self, store);
  show_flock (self);
  show_place (self, store);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
