/* stead-harvest-dialog.c - what a batch gave, into a lot or lost.
 *
 * While it is typed, the line below tells what will be made: the lot's code, its
 * best-by day and the cost that it carries.  What must wait cannot be saved as good.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-harvest-dialog.h"

#include "answer/stead-harvest-answer.h"
#include "app/keep/stead-item-dialog.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "store/stead-recipe-repo.h"
#include "store/stead-store-watch.h"

#define RESOURCE STEAD_UI ("raise/stead-harvest-dialog.ui")

/* Of the grid: below the sentence that they work out. */
#define WHYS_ROW 8

struct _SteadHarvestDialog
{
  SteadDialog          parent_instance;

  SteadDesk           *desk;
  SteadHarvestAnswer  *answer;
  SteadHarvest        *harvest;   /* as on file, or a new one */
  GPtrArray           *items;     /* of SteadItem: what the farm makes, and this batch can give */
  gboolean             asks;      /* the first line of the drop-down asks to choose */

  SteadField          *day, *good, *pieces, *live, *lost, *reason, *grade, *best_by, *note;
  GtkDropDown         *item;
  GtkCheckButton      *last;
  GtkLabel            *sentence, *caution, *rule;
  GtkGrid             *grid;
  SteadWhyBox         *whys;
};

G_DEFINE_FINAL_TYPE (SteadHarvestDialog, stead_harvest_dialog, STEAD_TYPE_DIALOG)

static const SteadItem *
chosen_item (SteadHarvestDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->item) - (self->asks ? 1 : 0);

  return at < self->items->len ? self->items->pdata[at] : NULL;
}

/* --- while it is typed -------------------------------------------------------------- */

/* A field as it stands, without a word about what is wrong in it. */
static double
peek (SteadField      *field,
      const SteadUnit *unit)
{
  double base = 0;

  if (stead_field_is_empty (field)
      || !stead_quantity_parse (stead_field_get_text (field), unit->dimension, unit, &base, NULL, NULL)
      || !(base >= 0))
    return 0;
  return base;
}

static SteadDay
peek_day (SteadHarvestDialog *self,
          SteadField         *field)
{
  SteadDay day = STEAD_DAY_NONE;

  if (stead_field_is_empty (field)
      || !stead_day_parse (stead_field_get_text (field), stead_store_get_today (stead_desk_get_store (self->desk)),
                           stead_date_order_from_locale (), &day, NULL))
    return STEAD_DAY_NONE;
  return day;
}

static void
show_text (GtkLabel   *label,
           const char *text)
{
  gtk_label_set_label (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL);
}

static void
typed_cb (SteadHarvestDialog *self)
{
  const SteadItem *item = chosen_item (self);
  g_autoptr(SteadHarvest) harvest = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  const SteadUnit *unit;

  if (self->answer == NULL)
    return;
  unit = item != NULL ? item->unit : self->answer->unit;
  harvest = stead_harvest_new ();
  harvest->day = peek_day (self, self->day);
  harvest->best_by = peek_day (self, self->best_by);
  harvest->item_id = item != NULL ? item->id : 0;
  harvest->quantity_base = peek (self->good, unit);
  harvest->lost_base = peek (self->lost, unit);
  harvest->is_last = gtk_check_button_get_active (self->last);
  gtk_widget_set_visible (GTK_WIDGET (self->reason), harvest->lost_base > 0);
  if (!stead_day_is_valid (harvest->day)
      || !stead_harvest_answer_set (self->answer, stead_desk_get_store (self->desk), harvest, NULL))
    return;
  show_text (self->sentence, self->answer->sentence);
  show_text (self->caution, self->answer->caution);
  whys = stead_harvest_answer_whys (self->answer);
  stead_why_box_set (self->whys, whys);
}

/* Amounts are read in the unit of what is made. */
static void
item_cb (SteadHarvestDialog *self)
{
  const SteadItem *item = chosen_item (self);

  if (self->answer == NULL)
    return;
  stead_field_set_unit (self->good, item != NULL ? item->unit : self->answer->unit);
  stead_field_set_unit (self->lost, item != NULL ? item->unit : self->answer->unit);
  typed_cb (self);
}

/* --- reading ------------------------------------------------------------------------- */

static gboolean
read_numbers (SteadHarvestDialog *self,
              SteadHarvest       *harvest)
{
  gint64 pieces = STEAD_COUNT_NONE;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &harvest->day);

  good &= stead_field_read_quantity (self->good, 0, &harvest->quantity_base);
  good &= stead_field_read_quantity (self->lost, 0, &harvest->lost_base);
  good &= stead_field_read_day (self->best_by, STEAD_DAY_NONE, &harvest->best_by);
  if (self->answer->batch->kind == STEAD_BATCH_FISH)
    {
      good &= stead_field_read_count (self->pieces, STEAD_COUNT_NONE, &pieces);
      good &= stead_field_read_quantity (self->live, NAN, &harvest->live_kg);
      harvest->pieces = pieces;
    }
  return good;
}

static char *
taken_text (SteadField *field)
{
  return stead_field_is_empty (field) ? NULL : g_strdup (stead_field_get_text (field));
}

static gboolean
read_harvest (SteadHarvestDialog *self)
{
  SteadHarvest *harvest = self->harvest;
  const SteadItem *item = chosen_item (self);

  if (!read_numbers (self, harvest))
    return FALSE;
  if (!(harvest->quantity_base > 0) && !(harvest->lost_base > 0))
    {
      stead_field_set_error (self->good, _("Enter how much was harvested."));
      return FALSE;
    }
  if (harvest->lost_base > 0 && stead_field_is_empty (self->reason))
    {
      stead_field_set_error (self->reason, _("Write down why, so that others can learn from it."));
      return FALSE;
    }
  if (harvest->quantity_base > 0 && item == NULL)
    {
      stead_field_set_error (self->good, _("Choose what it goes into the store room as, or make a new item."));
      return FALSE;
    }
  if (self->answer->batch->kind == STEAD_BATCH_FISH && harvest->pieces < 1)
    {
      stead_field_set_error (self->pieces, _("Count the fish that are taken out."));
      return FALSE;
    }
  harvest->item_id = item != NULL ? item->id : 0;
  harvest->is_last = gtk_check_button_get_active (self->last);
  g_free (harvest->reason);
  harvest->reason = harvest->lost_base > 0 ? taken_text (self->reason) : NULL;
  g_free (harvest->grade);
  harvest->grade = taken_text (self->grade);
  g_free (harvest->note);
  harvest->note = taken_text (self->note);
  return TRUE;
}

/* --- saving ----------------------------------------------------------------------------- */

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadHarvestDialog *self = data;

  stead_store_watch_id (store, &self->harvest->id);
  stead_store_watch_id (store, &self->harvest->lot_id);
  return stead_harvest_cost (store, self->harvest, &self->harvest->cost_cents, error)
         && stead_harvest_repo_save (store, self->harvest, error);
}

static gboolean
stead_harvest_dialog_save (SteadDialog  *dialog,
                           GError      **error)
{
  SteadHarvestDialog *self = STEAD_HARVEST_DIALOG (dialog);
  g_autofree char *step = NULL;

  if (!read_harvest (self))
    return FALSE;
  step = stead_harvest_name (self->harvest, self->harvest->quantity_base > 0 ? chosen_item (self) : NULL,
                             self->answer->batch->name);
  return stead_desk_act (self->desk, step, save_act, self, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_harvest_repo_delete (store, ((SteadHarvest *) data)->id, error);
}

static gboolean
stead_harvest_dialog_remove (SteadDialog  *dialog,
                             GError      **error)
{
  SteadHarvestDialog *self = STEAD_HARVEST_DIALOG (dialog);
  g_autofree char *name = stead_harvest_name (self->harvest, NULL, self->answer->batch->name);
  /* Translators: "harvest of “Catfish 1” on Mar 3" */
  g_autofree char *step = g_strdup_printf (_("deleting the %s"), name);

  return stead_desk_act (self->desk, step, remove_act, self->harvest, error);
}

/* --- showing ------------------------------------------------------------------------------ */

/* Eggs are counted; what a recipe makes comes from the kitchen. */
static gboolean
can_give (const SteadHarvestDialog *self,
          const SteadItem          *item)
{
  return item->kind == STEAD_ITEM_PRODUCE
         && (self->answer->batch->kind != STEAD_BATCH_FLOCK || item->unit->dimension == STEAD_DIMENSION_COUNT)
         && stead_recipe_repo_of_item (stead_desk_get_store (self->desk), item->id, NULL) == 0;
}

static gboolean
read_items (SteadHarvestDialog  *self,
            GError             **error)
{
  g_autoptr(GPtrArray) all = stead_item_repo_list (stead_desk_get_store (self->desk), error);

  if (all == NULL)
    return FALSE;
  g_clear_pointer (&self->items, g_ptr_array_unref);
  self->items = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_item_free);
  for (guint i = 0; i < all->len; i++)
    if (can_give (self, all->pdata[i]))
      g_ptr_array_add (self->items, g_steal_pointer (&all->pdata[i]));
  return TRUE;
}

static gboolean
is_listed (GPtrArray *items,
           gint64     id)
{
  for (guint i = 0; items != NULL && i < items->len; i++)
    if (((SteadItem *) items->pdata[i])->id == id)
      return TRUE;
  return FALSE;
}

static void
fill_items (SteadHarvestDialog *self,
            gint64              chosen)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  guint at = 0;

  /* What never came of this batch before is not taken for granted. */
  self->asks = !is_listed (self->items, chosen);
  if (self->asks)
    gtk_string_list_append (names, self->items->len > 0 ? _("Choose…") : _("Nothing yet: make a new item"));
  for (guint i = 0; i < self->items->len; i++)
    {
      const SteadItem *item = self->items->pdata[i];

      gtk_string_list_append (names, item->name);
      if (item->id == chosen)
        at = i;
    }
  gtk_drop_down_set_model (self->item, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->item, at);
  gtk_widget_set_sensitive (GTK_WIDGET (self->item), self->items->len > 0);
  item_cb (self);
}

static void
new_item_cb (SteadHarvestDialog *self)
{
  stead_item_dialog_show_new (GTK_WIDGET (self), self->desk, STEAD_ITEM_PRODUCE);
}

/* An item that was just made is chosen at once. */
static void
facts_changed_cb (SteadHarvestDialog *self)
{
  const SteadItem *item = chosen_item (self);
  gint64 chosen = item != NULL ? item->id : 0;
  g_autoptr(GPtrArray) before = g_steal_pointer (&self->items);

  if (stead_desk_get_store (self->desk) == NULL || !read_items (self, NULL))
    {
      self->items = g_steal_pointer (&before);
      return;
    }
  for (guint i = 0; i < self->items->len; i++)
    {
      gint64 id = ((SteadItem *) self->items->pdata[i])->id;

      if (!is_listed (before, id))
        chosen = id;
    }
  fill_items (self, chosen);
}

/* What holds for food of this kind, whatever was typed. */
static const char *
rule_of (SteadBatchKind kind)
{
  switch (kind)
    {
    case STEAD_BATCH_FISH:
      return _("Cooling, cutting and selling fish is ruled by the health department and by fish and game: ask what "
               "license it takes, and follow the local code.");
    case STEAD_BATCH_FLOCK:
      return _("Washing, cooling and labeling eggs is ruled by your state: follow its egg law.");
    case STEAD_BATCH_CROP:
    case STEAD_BATCH_KITCHEN:
    default:
      return _("Clean hands, clean boxes, clean water: follow the produce rules of your health department.");
    }
}

static void
show_harvest (SteadHarvestDialog *self)
{
  const SteadHarvest *harvest = self->harvest;
  gboolean fish = self->answer->batch->kind == STEAD_BATCH_FISH;
  const SteadUnit *mass = stead_unit_default (STEAD_DIMENSION_MASS, self->answer->farm->units);

  stead_field_set_unit (self->live, mass);
  stead_field_show_day (self->day, harvest->day);
  if (harvest->quantity_base > 0)
    stead_field_show_quantity (self->good, harvest->quantity_base);
  if (harvest->lost_base > 0)
    stead_field_show_quantity (self->lost, harvest->lost_base);
  if (harvest->pieces != STEAD_COUNT_NONE)
    stead_field_show_count (self->pieces, harvest->pieces);
  if (!isnan (harvest->live_kg))
    stead_field_show_quantity (self->live, harvest->live_kg);
  if (harvest->id != 0 && harvest->best_by != STEAD_DAY_NONE)
    stead_field_show_day (self->best_by, harvest->best_by);
  stead_field_set_text (self->reason, harvest->reason != NULL ? harvest->reason : "");
  stead_field_set_text (self->grade, harvest->grade != NULL ? harvest->grade : "");
  stead_field_set_text (self->note, harvest->note != NULL ? harvest->note : "");
  gtk_check_button_set_active (self->last, harvest->is_last);
  gtk_widget_set_visible (GTK_WIDGET (self->pieces), fish);
  gtk_widget_set_visible (GTK_WIDGET (self->live), fish);
  /* Eggs leave a flock from day to day: no harvest is its last. */
  gtk_widget_set_visible (GTK_WIDGET (self->last), self->answer->batch->kind != STEAD_BATCH_FLOCK);
  gtk_label_set_text (self->rule, rule_of (self->answer->batch->kind));
}

static void
stead_harvest_dialog_dispose (GObject *object)
{
  SteadHarvestDialog *self = STEAD_HARVEST_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_HARVEST_DIALOG);
  g_clear_pointer (&self->answer, stead_harvest_answer_free);
  g_clear_pointer (&self->harvest, stead_harvest_free);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_harvest_dialog_parent_class)->dispose (object);
}

static void
stead_harvest_dialog_class_init (SteadHarvestDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_harvest_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_harvest_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_harvest_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, item);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, good);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, pieces);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, live);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, lost);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, reason);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, grade);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, best_by);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, last);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, rule);
  gtk_widget_class_bind_template_child (widget_class, SteadHarvestDialog, grid);
  gtk_widget_class_bind_template_callback (widget_class, item_cb);
  gtk_widget_class_bind_template_callback (widget_class, typed_cb);
  gtk_widget_class_bind_template_callback (widget_class, new_item_cb);
}

static void
stead_harvest_dialog_init (SteadHarvestDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_grid_attach (self->grid, stead_why_box_new_folded (&self->whys), 0, WHYS_ROW, 2, 1);
}

/* Takes @harvest over. */
static void
show (GtkWidget    *parent,
      SteadDesk    *desk,
      SteadHarvest *harvest)
{
  g_autoptr(SteadHarvest) owned = harvest;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadHarvestAnswer) answer = stead_harvest_answer_new (stead_desk_get_store (desk), harvest->batch_id,
                                                                   harvest->id, &error);
  SteadHarvestDialog *self;
  gint64 item;

  if (answer == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_HARVEST_DIALOG, "title", harvest->id == 0 ? _("Harvest") : _("Change the harvest"),
                       "delete-label", harvest->id != 0 ? _("Delete the harvest") : NULL, NULL);
  self->desk = g_object_ref (desk);
  item = harvest->item_id != 0 ? harvest->item_id : answer->last_item_id;
  self->harvest = g_steal_pointer (&owned);
  self->answer = g_steal_pointer (&answer);
  stead_field_set_today (self->day, stead_store_get_today (stead_desk_get_store (desk)));
  stead_field_set_today (self->best_by, stead_store_get_today (stead_desk_get_store (desk)));
  if (!read_items (self, NULL))
    self->items = g_ptr_array_new ();
  fill_items (self, item);
  show_harvest (self);
  typed_cb (self);
  g_signal_connect_object (self->day, "changed", G_CALLBACK (typed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->good, "changed", G_CALLBACK (typed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->lost, "changed", G_CALLBACK (typed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->best_by, "changed", G_CALLBACK (typed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (desk, "changed", G_CALLBACK (facts_changed_cb), self, G_CONNECT_SWAPPED);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->good));
}

void
stead_harvest_dialog_show (GtkWidget *parent,
                           SteadDesk *desk,
                           gint64     batch_id)
{
  SteadHarvest *harvest;

  g_return_if_fail (STEAD_IS_DESK (desk) && stead_desk_get_store (desk) != NULL);
  harvest = stead_harvest_new ();
  harvest->batch_id = batch_id;
  harvest->day = stead_store_get_today (stead_desk_get_store (desk));
  show (parent, desk, harvest);
}

void
stead_harvest_dialog_edit (GtkWidget *parent,
                           SteadDesk *desk,
                           gint64     harvest_id)
{
  g_autoptr(GError) error = NULL;
  SteadHarvest *harvest;

  g_return_if_fail (STEAD_IS_DESK (desk) && stead_desk_get_store (desk) != NULL);
  harvest = stead_harvest_repo_get (stead_desk_get_store (desk), harvest_id, &error);
  if (harvest == NULL)
    stead_desk_say (desk, error->message, FALSE);
  else
    show (parent, desk, harvest);
}
