/* stead-recipe-dialog.c - a recipe: what it makes, what goes in, what is done, how it is kept.
 *
 * What it makes and the weights of its ingredients are saved along, in one step.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/make/stead-recipe-dialog.h"

#include "app/keep/stead-item-dialog.h"
#include "app/make/stead-recipe-acid.h"
#include "app/make/stead-recipe-made.h"
#include "app/make/stead-recipe-part-row.h"
#include "app/make/stead-recipe-step-row.h"
#include "app/make/stead-step-words.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-store-watch.h"

struct _SteadRecipeDialog
{
  SteadDialog     parent_instance;

  SteadRecipe    *recipe;
  SteadItem       fresh;         /* a new item that it makes; its words belong to the fields */
  GPtrArray      *items;         /* of SteadItem: all, so that recipes inside find theirs */
  GPtrArray      *recipes;       /* of SteadRecipe: those that can go in */
  GPtrArray      *part_rows, *step_rows;   /* not owned */
  GtkSizeGroup   *widths;        /* of the ingredients */
  gulong          changed_id;

  SteadField     *name, *minutes, *equipment, *note;
  GtkDropDown    *kept;
  GtkCheckButton *sealed, *retired;
  SteadRecipeMade *made;
  SteadRecipeAcid *acid;
  GtkBox         *parts, *steps;
};

G_DEFINE_FINAL_TYPE (SteadRecipeDialog, stead_recipe_dialog, STEAD_TYPE_DIALOG)

/* --- ingredients and steps ---------------------------------------------------------------- */

static SteadUnitSystem
units_of (SteadDesk *desk)
{
  return stead_desk_get_farm (desk)->units;
}

static void
remove_part (SteadRecipeDialog *self,
             GtkWidget         *row)
{
  g_ptr_array_remove (self->part_rows, row);
  gtk_box_remove (self->parts, row);
}

static void
remove_step (SteadRecipeDialog *self,
             GtkWidget         *row)
{
  g_ptr_array_remove (self->step_rows, row);
  gtk_box_remove (self->steps, row);
}

static SteadRecipePartRow *
add_part (SteadRecipeDialog *self,
          SteadUnitSystem    units)
{
  GtkWidget *row = stead_recipe_part_row_new (units);

  stead_recipe_part_row_share_width (STEAD_RECIPE_PART_ROW (row), self->widths);
  stead_recipe_part_row_set_choices (STEAD_RECIPE_PART_ROW (row), self->items, self->recipes);
  g_signal_connect_object (row, "removed", G_CALLBACK (remove_part), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->parts, row);
  g_ptr_array_add (self->part_rows, row);
  return STEAD_RECIPE_PART_ROW (row);
}

static SteadRecipeStepRow *
add_step (SteadRecipeDialog *self,
          SteadUnitSystem    units)
{
  GtkWidget *row = stead_recipe_step_row_new (units);

  g_signal_connect_object (row, "removed", G_CALLBACK (remove_step), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->steps, row);
  g_ptr_array_add (self->step_rows, row);
  return STEAD_RECIPE_STEP_ROW (row);
}

static void
add_part_cb (SteadRecipeDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));

  if (self->items->len == 0)
    stead_dialog_show_error (STEAD_DIALOG (self), _("Make the item first: press “New item…”."));
  else
    gtk_widget_child_focus (GTK_WIDGET (add_part (self, units_of (desk))), GTK_DIR_TAB_FORWARD);
}

static void
add_step_cb (SteadRecipeDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));

  gtk_widget_child_focus (GTK_WIDGET (add_step (self, units_of (desk))), GTK_DIR_TAB_FORWARD);
}

static void
new_item_cb (SteadRecipeDialog *self)
{
  stead_item_dialog_show_new (GTK_WIDGET (self), stead_dialog_get_desk (STEAD_DIALOG (self)), STEAD_ITEM_INGREDIENT);
}

/* A new item was made: every line can name it. */
static void
items_changed_cb (SteadRecipeDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  g_autoptr(GPtrArray) items = stead_recipe_part_items (stead_desk_get_store (desk), NULL);

  if (items == NULL)
    return;
  for (guint i = 0; i < self->part_rows->len; i++)
    stead_recipe_part_row_set_choices (self->part_rows->pdata[i], items, self->recipes);
  g_ptr_array_unref (self->items);
  self->items = g_steal_pointer (&items);
  stead_recipe_made_set_items (self->made, self->items, stead_recipe_made_get_item_id (self->made));
  if (self->part_rows->len == 0 && self->items->len > 0)
    add_part (self, units_of (desk));
}

/* --- how it is kept ------------------------------------------------------------------------ */

static void
kept_cb (SteadRecipeDialog *self)
{
  gboolean room = gtk_drop_down_get_selected (self->kept) == STEAD_KEPT_ROOM;

  gtk_widget_set_visible (GTK_WIDGET (self->acid), room || gtk_check_button_get_active (self->sealed));
}

static void
fill_kept (SteadRecipeDialog *self)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (int i = STEAD_KEPT_HOT; i <= STEAD_KEPT_ROOM; i++)
    gtk_string_list_append (names, stead_kept_label ((SteadKept) i));
  gtk_drop_down_set_model (self->kept, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->kept, self->recipe->kept);
}

/* --- reading -------------------------------------------------------------------------------- */

static gboolean
read_parts (SteadRecipeDialog *self)
{
  gboolean good = TRUE;

  g_ptr_array_set_size (self->recipe->parts, 0);
  for (guint i = 0; i < self->part_rows->len; i++)
    {
      SteadRecipePart *part = stead_recipe_part_row_read (self->part_rows->pdata[i]);

      if (part != NULL)
        g_ptr_array_add (self->recipe->parts, part);
      else
        good = FALSE;
    }
  if (self->part_rows->len > 0)
    return good;
  stead_dialog_show_error (STEAD_DIALOG (self), _("Enter at least one ingredient."));
  return FALSE;
}

static gboolean
read_steps (SteadRecipeDialog *self)
{
  gboolean good = TRUE;

  g_ptr_array_set_size (self->recipe->steps, 0);
  for (guint i = 0; i < self->step_rows->len; i++)
    {
      SteadRecipeStep *step = stead_recipe_step_row_read (self->step_rows->pdata[i]);

      if (step != NULL)
        g_ptr_array_add (self->recipe->steps, step);
      else
        good = FALSE;
    }
  return good;
}

/* (transfer full) (nullable): NULL if nothing was typed */
static char *
typed (SteadField *field)
{
  return stead_field_is_empty (field) ? NULL : g_strdup (stead_field_get_text (field));
}

static gboolean
read_name (SteadRecipeDialog *self)
{
  const char *name = NULL;
  g_autoptr(GPtrArray) all = NULL;

  if (!stead_field_read_text (self->name, &name))
    return FALSE;
  g_free (self->recipe->name);
  self->recipe->name = g_strstrip (g_strdup (name));
  all = stead_recipe_repo_list (stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self))), TRUE, NULL);
  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      const SteadRecipe *other = all->pdata[i];

      if (other->id != self->recipe->id && g_strcmp0 (other->name, self->recipe->name) == 0)
        {
          stead_field_set_error (self->name, _("There is a recipe of that name already. Choose another one."));
          return FALSE;
        }
    }
  return TRUE;
}

static gboolean
read_recipe (SteadRecipeDialog *self)
{
  SteadRecipe *recipe = self->recipe;
  SteadStore *store = stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)));
  gboolean retired = gtk_check_button_get_active (self->retired);
  gboolean good = read_name (self);

  good &= stead_recipe_made_read (self->made, recipe, &self->fresh);
  good &= read_parts (self);
  good &= read_steps (self);
  good &= stead_field_read_number (self->minutes, 0, &recipe->minutes);
  if (!good || !stead_recipe_acid_read (self->acid, recipe))
    return FALSE;
  recipe->kept = (SteadKept) gtk_drop_down_get_selected (self->kept);
  recipe->sealed = gtk_check_button_get_active (self->sealed);
  g_free (recipe->equipment);
  recipe->equipment = typed (self->equipment);
  g_free (recipe->note);
  recipe->note = typed (self->note);
  if (retired != (recipe->retired_on != STEAD_DAY_NONE))
    recipe->retired_on = retired ? stead_store_get_today (store) : STEAD_DAY_NONE;
  return TRUE;
}

/* --- saving --------------------------------------------------------------------------------- */

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadRecipeDialog *self = data;

  for (guint i = 0; i < self->part_rows->len; i++)
    {
      SteadItem *weighed = stead_recipe_part_row_get_weighed (self->part_rows->pdata[i]);

      if (weighed != NULL && !stead_item_repo_save (store, weighed, error))
        return FALSE;
    }
  stead_store_watch_id (store, &self->recipe->id);
  stead_store_watch_id (store, &self->recipe->item_id);
  stead_store_watch_id (store, &self->fresh.id);
  if (self->recipe->item_id == 0)
    {
      if (!stead_item_repo_save (store, &self->fresh, error))
        return FALSE;
      self->recipe->item_id = self->fresh.id;
    }
  return stead_recipe_repo_save (store, self->recipe, error);
}

static gboolean
stead_recipe_dialog_save (SteadDialog  *dialog,
                          GError      **error)
{
  SteadRecipeDialog *self = STEAD_RECIPE_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  g_autofree char *step = NULL;

  if (!read_recipe (self))
    return FALSE;
  /* Translators: a recipe's name follows */
  step = g_strdup_printf (self->recipe->id == 0 ? _("the recipe “%s”") : _("changes of the recipe “%s”"), self->recipe->name);
  /* Our own step changes the farm; the rows need not follow it. */
  g_signal_handler_block (desk, self->changed_id);
  if (stead_desk_act (desk, step, save_act, self, error))
    {
      stead_desk_jump (desk, STEAD_TARGET_RECIPE, self->recipe->id);
      return TRUE;
    }
  g_signal_handler_unblock (desk, self->changed_id);
  return FALSE;
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_recipe_repo_delete (store, ((SteadRecipe *) data)->id, error);
}

static gboolean
stead_recipe_dialog_remove (SteadDialog  *dialog,
                            GError      **error)
{
  SteadRecipeDialog *self = STEAD_RECIPE_DIALOG (dialog);
  /* Translators: a recipe's name follows */
  g_autofree char *step = g_strdup_printf (_("deleting the recipe “%s”"), self->recipe->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->recipe, error);
}

/* --- showing -------------------------------------------------------------------------------- */

static void
show_text (SteadField *field,
           const char *text)
{
  stead_field_set_text (field, text != NULL ? text : "");
}

static void
show_rest (SteadRecipeDialog *self,
           SteadDay           today)
{
  const SteadRecipe *recipe = self->recipe;

  show_text (self->name, recipe->name);
  show_text (self->equipment, recipe->equipment);
  show_text (self->note, recipe->note);
  stead_recipe_acid_show (self->acid, recipe, today);
  if (recipe->minutes > 0)
    stead_field_show_number (self->minutes, recipe->minutes);
  gtk_check_button_set_active (self->sealed, recipe->sealed);
  gtk_check_button_set_active (self->retired, recipe->retired_on != STEAD_DAY_NONE);
  gtk_widget_set_visible (GTK_WIDGET (self->retired), recipe->id != 0);
  fill_kept (self);
  kept_cb (self);
}

static void
show_recipe (SteadRecipeDialog *self,
             SteadDesk         *desk)
{
  const SteadRecipe *recipe = self->recipe;
  SteadUnitSystem units = units_of (desk);

  stead_recipe_made_set_units (self->made, units);
  stead_recipe_made_set_items (self->made, self->items, recipe->item_id);
  stead_recipe_made_show_yield (self->made, recipe->yield_base);
  for (guint i = 0; i < recipe->parts->len; i++)
    stead_recipe_part_row_show (add_part (self, units), recipe->parts->pdata[i]);
  for (guint i = 0; i < recipe->steps->len; i++)
    stead_recipe_step_row_show (add_step (self, units), recipe->steps->pdata[i]);
  if (recipe->id == 0 && self->items->len > 0)
    add_part (self, units);
  if (recipe->id == 0)
    add_step (self, units);
  show_rest (self, stead_store_get_today (stead_desk_get_store (desk)));
}

static void
stead_recipe_dialog_dispose (GObject *object)
{
  SteadRecipeDialog *self = STEAD_RECIPE_DIALOG (object);
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));

  if (desk != NULL)
    g_clear_signal_handler (&self->changed_id, desk);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_RECIPE_DIALOG);
  g_clear_pointer (&self->recipe, stead_recipe_free);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_pointer (&self->recipes, g_ptr_array_unref);
  g_clear_object (&self->widths);
  g_clear_pointer (&self->part_rows, g_ptr_array_unref);
  g_clear_pointer (&self->step_rows, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_recipe_dialog_parent_class)->dispose (object);
}

static void
stead_recipe_dialog_class_init (SteadRecipeDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_RECIPE_ACID);
  g_type_ensure (STEAD_TYPE_RECIPE_MADE);
  G_OBJECT_CLASS (klass)->dispose = stead_recipe_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_recipe_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_recipe_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-recipe-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, minutes);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, equipment);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, kept);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, sealed);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, retired);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, made);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, acid);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, parts);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeDialog, steps);
  gtk_widget_class_bind_template_callback (widget_class, add_part_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_step_cb);
  gtk_widget_class_bind_template_callback (widget_class, kept_cb);
  gtk_widget_class_bind_template_callback (widget_class, new_item_cb);
}

static void
stead_recipe_dialog_init (SteadRecipeDialog *self)
{
  self->part_rows = g_ptr_array_new ();
  self->widths = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  self->step_rows = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

static SteadRecipe *
load (SteadStore  *store,
      gint64       recipe_id,
      GError     **error)
{
  return recipe_id != 0 ? stead_recipe_repo_get (store, recipe_id, error) : stead_recipe_new ();
}

void
stead_recipe_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     recipe_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadRecipe) recipe = load (store, recipe_id, &error);
  g_autoptr(GPtrArray) items = recipe != NULL ? stead_recipe_part_items (store, &error) : NULL;
  g_autoptr(GPtrArray) recipes = items != NULL ? stead_recipe_part_recipes (store, recipe_id, &error) : NULL;
  SteadRecipeDialog *self;

  if (recipes == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_RECIPE_DIALOG, "title", recipe_id != 0 ? _("Recipe") : _("New recipe"),
                       "delete-label", recipe_id != 0 ? _("Delete recipe") : NULL, NULL);
  self->recipe = g_steal_pointer (&recipe);
  self->items = g_steal_pointer (&items);
  self->recipes = g_steal_pointer (&recipes);
  self->changed_id = g_signal_connect_object (desk, "changed", G_CALLBACK (items_changed_cb), self, G_CONNECT_SWAPPED);
  show_recipe (self, desk);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
