/* stead-fish-dialog.c - the plan of a group of fish: new, or changed.
 *
 * Choosing a kind of fish that the program knows proposes its growth and its weight
 * for sale.  What the file refuses, the frame tells above the buttons.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-fish-dialog.h"

#include "answer/stead-fish-text.h"
#include "app/raise/stead-origin-pick.h"
#include "app/raise/stead-tank-dialog.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-round.h"
#include "store/stead-farm-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-store-watch.h"
#include "store/stead-water-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-fish-dialog.ui")

/* Feeding, looking, and measuring the water; a field that can be changed. */
#define DEFAULT_CARE_MINUTES 15

/* What fish that are put in weigh is asked for in the small unit. */
#define SMALL_G 50

struct _SteadFishDialog
{
  SteadDialog       parent_instance;

  SteadFish        *group;      /* as on file, or the proposal */
  SteadUnitSystem   units;
  const SteadUnit  *weight_unit, *sale_unit;   /* of those fields */
  GPtrArray        *feeds;      /* of SteadItem: what the drop-down offers after "not said" */
  GPtrArray        *tanks;      /* of SteadTank: after "choose one" */
  gboolean          filling;

  SteadField       *name, *own_species, *started, *stocked, *weight, *cost, *protein, *sale, *share,
                   *spread, *deaths, *tgc, *purge, *care, *ended, *note;
  GtkCheckButton   *gift;
  GtkDropDown      *species, *tank, *feed;
  GtkLabel         *range;
  SteadOriginPick  *origin;
};

G_DEFINE_FINAL_TYPE (SteadFishDialog, stead_fish_dialog, STEAD_TYPE_DIALOG)

/* --- the kind of fish ------------------------------------------------------------------- */

/* %FALSE for the choice after the kinds that the program knows. */
static gboolean
chosen_species (SteadFishDialog  *self,
                SteadFishSpecies *out)
{
  guint at = gtk_drop_down_get_selected (self->species);

  if (at >= STEAD_N_FISH_SPECIES)
    return FALSE;
  *out = (SteadFishSpecies) at;
  return TRUE;
}

static void
show_weight (SteadField      *field,
             double           weight_g,
             const SteadUnit *unit)
{
  g_autofree char *text = stead_fish_weight_number (weight_g, unit);

  stead_field_set_unit (field, unit);
  stead_field_show_as (field, text, weight_g / 1000);
}

static void
show_sale (SteadFishDialog *self,
           double           sale_g)
{
  self->sale_unit = stead_fish_weight_unit (sale_g, self->units);
  show_weight (self->sale, sale_g, self->sale_unit);
}

/* What the chosen kind is known for; a new group takes its growth and weight for sale. */
static void
species_cb (SteadFishDialog *self)
{
  SteadFishSpecies species = STEAD_FISH_TILAPIA;
  gboolean known = chosen_species (self, &species);
  g_autofree char *words = known ? stead_fish_kind_words (species, self->units)
                           : g_strdup (_("The program has no table for this fish: it learns from your weighings, "
                                         "and names no amount of feed."));

  gtk_label_set_text (self->range, words);
  gtk_widget_set_visible (GTK_WIDGET (self->own_species), !known);
  if (!known || self->filling || self->group->batch.id != 0)
    return;
  stead_field_show_number (self->tgc, stead_fish_kind (species)->tgc_x100);
  show_sale (self, stead_fish_kind (species)->market_g);
}

static void
fill_species (SteadFishDialog *self)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (int i = 0; i < STEAD_N_FISH_SPECIES; i++)
    gtk_string_list_append (names, stead_fish_name ((SteadFishSpecies) i));
  gtk_string_list_append (names, _("Another kind of fish"));
  gtk_drop_down_set_model (self->species, G_LIST_MODEL (names));
}

/* --- where they live, what they eat --------------------------------------------------------- */

static gint64
chosen_tank (SteadFishDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->tank);

  return at == 0 || at > self->tanks->len ? 0 : ((const SteadTank *) self->tanks->pdata[at - 1])->place_id;
}

static gboolean
had_tank (const GPtrArray *tanks,
          gint64           place_id)
{
  for (guint i = 0; i < tanks->len; i++)
    if (((const SteadTank *) tanks->pdata[i])->place_id == place_id)
      return TRUE;
  return FALSE;
}

/* Of the tanks, @wanted is chosen; one that is new since the last time goes first, and
 * the only one there is needs no choosing. */
static void
fill_tanks (SteadFishDialog *self,
            SteadStore      *store,
            gint64           wanted,
            gboolean         choose_new)
{
  g_autoptr(GPtrArray) before = g_steal_pointer (&self->tanks);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  guint at = 0;

  self->tanks = stead_tank_repo_list (store, NULL);
  if (self->tanks == NULL)
    self->tanks = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_tank_free);
  gtk_string_list_append (names, _("Choose a tank"));
  for (guint i = 0; i < self->tanks->len; i++)
    {
      const SteadTank *tank = self->tanks->pdata[i];

      gtk_string_list_append (names, tank->name);
      if (choose_new && !had_tank (before, tank->place_id))
        wanted = tank->place_id;
    }
  for (guint i = 0; i < self->tanks->len; i++)
    if (((const SteadTank *) self->tanks->pdata[i])->place_id == wanted)
      at = i + 1;
  gtk_drop_down_set_model (self->tank, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->tank, at == 0 && self->tanks->len == 1 ? 1 : at);
}

/* What was asked for is there: the message goes. */
static void
tank_cb (SteadFishDialog *self)
{
  if (!self->filling && chosen_tank (self) != 0)
    stead_dialog_show_error (STEAD_DIALOG (self), NULL);
}

static void
new_tank_cb (SteadFishDialog *self)
{
  stead_tank_dialog_show (GTK_WIDGET (self), stead_dialog_get_desk (STEAD_DIALOG (self)), 0, 0);
}

/* A tank was added from here. */
static void
desk_changed_cb (SteadFishDialog *self)
{
  SteadStore *store = stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)));

  if (store != NULL)
    fill_tanks (self, store, chosen_tank (self), TRUE);
}

/* The feeds of the store room, after the choice of saying none. */
static void
fill_feeds (SteadFishDialog *self,
            SteadStore      *store)
{
  g_autoptr(GPtrArray) items = stead_item_repo_list (store, NULL);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  guint chosen = 0;

  gtk_string_list_append (names, _("Not said"));
  for (guint i = 0; items != NULL && i < items->len; i++)
    {
      SteadItem *item = items->pdata[i];

      if (item->kind != STEAD_ITEM_FEED || item->unit->dimension != STEAD_DIMENSION_MASS)
        continue;
      gtk_string_list_append (names, item->name);
      g_ptr_array_add (self->feeds, g_steal_pointer (&items->pdata[i]));
      if (item->id == self->group->batch.feed_item_id)
        chosen = self->feeds->len;
    }
  gtk_drop_down_set_model (self->feed, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->feed, chosen);
}

/* --- where they come from ------------------------------------------------------------------ */

/* Fish of the store room bring their cost along. */
static void
origin_cb (SteadFishDialog *self)
{
  gboolean by_hand = stead_origin_pick_get_item (self->origin) == 0;

  gtk_widget_set_visible (GTK_WIDGET (self->cost), by_hand);
  gtk_widget_set_visible (GTK_WIDGET (self->gift), by_hand);
  if (!by_hand && stead_field_is_empty (self->stocked))
    stead_field_show_count (self->stocked, stead_origin_pick_get_on_hand (self->origin));
}

/* --- reading and saving ------------------------------------------------------------------- */

static void
replace (char       **text,
         SteadField  *field)
{
  g_free (*text);
  *text = stead_field_is_empty (field) ? NULL : g_strstrip (g_strdup (stead_field_get_text (field)));
}

static gboolean
read_numbers (SteadFishDialog *self,
              SteadFish       *group)
{
  double weight_kg = 0, sale_kg = 0;
  gint64 purge = 0;
  gboolean good = stead_field_read_count (self->stocked, 0, &group->stocked);

  good &= stead_field_read_quantity (self->weight, 0, &weight_kg);
  good &= stead_field_read_money (self->cost, 0, &group->cost_cents);
  good &= stead_field_read_number (self->protein, NAN, &group->protein_frac);
  good &= stead_field_read_quantity (self->sale, 0, &sale_kg);
  good &= stead_field_read_number (self->share, 0, &group->sale_frac);
  good &= stead_field_read_number (self->spread, 0, &group->spread_frac);
  good &= stead_field_read_number (self->deaths, 0, &group->deaths_year);
  good &= stead_field_read_number (self->tgc, 0, &group->tgc);
  good &= stead_field_read_count (self->purge, 0, &purge);
  good &= stead_field_read_number (self->care, 0, &group->batch.care_minutes_day);
  group->stocked_g = stead_round_back (weight_kg * 1000, group->stocked_g);
  group->sale_g = stead_round_back (sale_kg * 1000, group->sale_g);
  group->purge_days = (int) MIN (purge, 3650);
  return good;
}

/* Of the store room no more can come than are there. */
static gboolean
check_origin (SteadFishDialog *self,
              const SteadFish *group)
{
  gint64 on_hand = stead_origin_pick_get_on_hand (self->origin);
  g_autofree char *number = NULL, *text = NULL;

  if (stead_origin_pick_get_item (self->origin) == 0 || (group->stocked > 0 && group->stocked <= on_hand))
    return TRUE;
  number = stead_number_format ((double) on_hand, 0);
  /* Translators: a number of animals in the store room. */
  text = g_strdup_printf (_("Enter how many of the %s in the store room are put in."), number);
  stead_field_set_error (self->stocked, text);
  gtk_widget_grab_focus (GTK_WIDGET (self->stocked));
  return FALSE;
}

static gboolean
check_together (SteadFishDialog *self,
                const SteadFish *group)
{
  if (group->stocked > 0 && !(group->stocked_g > 0))
    {
      stead_field_set_error (self->weight, _("Weigh some and enter what one fish weighs."));
      gtk_widget_grab_focus (GTK_WIDGET (self->weight));
      return FALSE;
    }
  if (!check_origin (self, group))
    return FALSE;
  if (group->batch.place_id == 0)
    {
      stead_dialog_show_error (STEAD_DIALOG (self), _("Choose the tank that the fish live in, or add a new one."));
      gtk_widget_grab_focus (GTK_WIDGET (self->tank));
      return FALSE;
    }
  return TRUE;
}

/* Reads all fields, so that each one that is wrong says so at once. */
static gboolean
read_fields (SteadFishDialog *self,
             SteadFish       *group)
{
  SteadFishSpecies species;
  guint feed = gtk_drop_down_get_selected (self->feed);
  const char *name = NULL;
  gboolean good = stead_field_read_text (self->name, &name);

  good &= stead_field_read_day (self->started, STEAD_DAY_NONE, &group->batch.started_on);
  good &= stead_field_read_day (self->ended, STEAD_DAY_NONE, &group->batch.ended_on);
  good &= read_numbers (self, group);
  if (!good)
    return FALSE;
  replace (&group->batch.name, self->name);
  replace (&group->batch.note, self->note);
  if (chosen_species (self, &species))
    {
      g_free (group->species);
      group->species = g_strdup (stead_fish_kind (species)->id);
    }
  else
    replace (&group->species, self->own_species);
  group->batch.place_id = chosen_tank (self);
  group->batch.feed_item_id = feed == 0 || feed > self->feeds->len
                              ? 0 : ((const SteadItem *) self->feeds->pdata[feed - 1])->id;
  group->is_gift = gtk_check_button_get_active (self->gift);
  if (stead_origin_pick_get_item (self->origin) != 0)
    {
      group->cost_cents = 0;      /* their lot brings it along */
      group->is_gift = FALSE;
    }
  return check_together (self, group);
}

typedef struct
{
  SteadFish *group;
  gint64     item_id;    /* that they come out of; 0: none */
} Saving;

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  Saving *saving = data;
  SteadFish *group = saving->group;

  stead_store_watch_id (store, &group->batch.id);
  return stead_fish_repo_save (store, group, error)
         && (saving->item_id == 0
             || stead_lot_repo_use (store, saving->item_id, group->batch.id, group->batch.started_on,
                                    (double) group->stocked, 0, error));
}

static gboolean
stead_fish_dialog_save (SteadDialog *dialog,
                        GError     **error)
{
  SteadFishDialog *self = STEAD_FISH_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  gboolean is_new = self->group->batch.id == 0;
  Saving saving = { self->group, is_new ? stead_origin_pick_get_item (self->origin) : 0 };
  g_autofree char *step = NULL;

  if (!read_fields (self, self->group))
    return FALSE;
  step = g_strdup_printf (is_new ? _("new group of fish %s") : _("changes to %s"), self->group->batch.name);
  if (!stead_desk_act (desk, step, save_act, &saving, error))
    return FALSE;
  if (is_new)
    stead_desk_jump (desk, STEAD_TARGET_BATCH, self->group->batch.id);
  return TRUE;
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_fish_repo_delete (store, ((SteadFish *) data)->batch.id, error);
}

static gboolean
stead_fish_dialog_remove (SteadDialog *dialog,
                          GError     **error)
{
  SteadFishDialog *self = STEAD_FISH_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting %s"), self->group->batch.name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->group, error);
}

/* --- showing -------------------------------------------------------------------------------- */

static void
show_species (SteadFishDialog *self)
{
  SteadFishSpecies species;

  if (stead_fish_species_from_id (self->group->species, &species))
    gtk_drop_down_set_selected (self->species, species);
  else
    {
      gtk_drop_down_set_selected (self->species, STEAD_N_FISH_SPECIES);
      stead_field_set_text (self->own_species, self->group->species);
    }
  species_cb (self);
}

static void
show_group (SteadFishDialog *self)
{
  const SteadFish *group = self->group;

  stead_field_set_text (self->name, group->batch.name != NULL ? group->batch.name : "");
  stead_field_set_text (self->note, group->batch.note != NULL ? group->batch.note : "");
  stead_field_show_day (self->started, group->batch.started_on);
  if (group->batch.ended_on != STEAD_DAY_NONE)
    stead_field_show_day (self->ended, group->batch.ended_on);
  if (!isnan (group->protein_frac))
    stead_field_show_number (self->protein, group->protein_frac);
  show_sale (self, group->sale_g);
  stead_field_show_number (self->share, group->sale_frac);
  stead_field_show_number (self->spread, group->spread_frac);
  stead_field_show_number (self->deaths, group->deaths_year);
  stead_field_show_number (self->tgc, group->tgc);
  stead_field_show_count (self->purge, group->purge_days);
  stead_field_show_number (self->care, group->batch.care_minutes_day);
  gtk_check_button_set_active (self->gift, group->is_gift);
  if (group->batch.id == 0)
    return;
  stead_field_show_count (self->stocked, group->stocked);
  if (group->stocked_g > 0)
    show_weight (self->weight, group->stocked_g, self->weight_unit);
  stead_field_show_money (self->cost, group->cost_cents);
}

static void
prepare_fields (SteadFishDialog *self,
                SteadDesk       *desk)
{
  SteadDay today = stead_store_get_today (stead_desk_get_store (desk));
  double weight_g = self->group->stocked_g > 0 ? self->group->stocked_g : SMALL_G;

  stead_field_set_currency (self->cost, stead_desk_get_farm (desk)->currency);
  self->weight_unit = stead_fish_weight_unit (weight_g, self->units);
  stead_field_set_unit (self->weight, self->weight_unit);
  stead_field_set_today (self->started, today);
  stead_field_set_today (self->ended, today);
}

static void
stead_fish_dialog_dispose (GObject *object)
{
  SteadFishDialog *self = STEAD_FISH_DIALOG (object);

  self->filling = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_FISH_DIALOG);
  g_clear_pointer (&self->group, stead_fish_free);
  g_clear_pointer (&self->feeds, g_ptr_array_unref);
  g_clear_pointer (&self->tanks, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_fish_dialog_parent_class)->dispose (object);
}

#define BIND(child) gtk_widget_class_bind_template_child (widget_class, SteadFishDialog, child)

static void
stead_fish_dialog_class_init (SteadFishDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_ORIGIN_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_fish_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_fish_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_fish_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  BIND (name);
  BIND (species);
  BIND (own_species);
  BIND (range);
  BIND (origin);
  BIND (started);
  BIND (tank);
  BIND (stocked);
  BIND (weight);
  BIND (cost);
  BIND (gift);
  BIND (feed);
  BIND (protein);
  BIND (sale);
  BIND (share);
  BIND (spread);
  BIND (deaths);
  BIND (tgc);
  BIND (purge);
  BIND (care);
  BIND (ended);
  BIND (note);
  gtk_widget_class_bind_template_callback (widget_class, species_cb);
  gtk_widget_class_bind_template_callback (widget_class, tank_cb);
  gtk_widget_class_bind_template_callback (widget_class, new_tank_cb);
  gtk_widget_class_bind_template_callback (widget_class, origin_cb);
}

static void
stead_fish_dialog_init (SteadFishDialog *self)
{
  self->feeds = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_item_free);
  self->tanks = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_tank_free);
  self->group = stead_fish_new ();
  self->filling = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_species (self);
}

void
stead_fish_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     fish_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadFishDialog *self;
  g_autoptr(SteadFish) group = NULL;
  g_autoptr(GError) error = NULL;

  g_return_if_fail (store != NULL);

  group = fish_id > 0 ? stead_fish_repo_get (store, fish_id, &error) : stead_fish_new ();
  if (group == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  if (fish_id == 0)
    {
      group->batch.started_on = stead_store_get_today (store);
      group->batch.care_minutes_day = DEFAULT_CARE_MINUTES;
    }
  self = g_object_new (STEAD_TYPE_FISH_DIALOG, "title", fish_id > 0 ? _("Change the group of fish") : _("New group of fish"),
                       "delete-label", fish_id > 0 ? _("Delete the group and its log") : NULL, NULL);
  stead_fish_free (self->group);
  self->group = g_steal_pointer (&group);
  self->units = stead_desk_get_farm (desk)->units;
  prepare_fields (self, desk);
  fill_feeds (self, store);
  fill_tanks (self, store, self->group->batch.place_id, FALSE);
  show_species (self);
  show_group (self);
  gtk_widget_set_visible (GTK_WIDGET (self->origin), stead_origin_pick_fill (self->origin, store) && fish_id == 0);
  self->filling = FALSE;
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  g_signal_connect_object (desk, "changed", G_CALLBACK (desk_changed_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
