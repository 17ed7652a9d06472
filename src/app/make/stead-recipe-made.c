/* stead-recipe-made.c - what a recipe makes, and how much: an item of the farm, or something new. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/make/stead-recipe-made.h"

#include "app/stead-field.h"
#include "app/stead-ui.h"

struct _SteadRecipeMade
{
  GtkWidget    parent_instance;

  GPtrArray   *items;      /* of SteadItem: all */
  GPtrArray   *produce;    /* of SteadItem, not owned: what can be made; NULL while it is filled */
  GPtrArray   *units;      /* of SteadUnit: of something new */

  SteadField  *yield, *item_name;
  GtkDropDown *makes, *unit;
  GtkWidget   *unit_box;
};

G_DEFINE_FINAL_TYPE (SteadRecipeMade, stead_recipe_made, GTK_TYPE_WIDGET)

/* (nullable): NULL: something new */
static const SteadItem *
made_item (SteadRecipeMade *self)
{
  guint at = gtk_drop_down_get_selected (self->makes);

  return self->produce != NULL && at < self->produce->len ? self->produce->pdata[at] : NULL;
}

static const SteadUnit *
made_unit (SteadRecipeMade *self)
{
  const SteadItem *item = made_item (self);
  guint at = gtk_drop_down_get_selected (self->unit);

  if (item != NULL)
    return item->unit;
  return at < self->units->len ? self->units->pdata[at] : self->units->pdata[0];
}

static void
unit_cb (SteadRecipeMade *self)
{
  if (self->produce != NULL)
    stead_field_set_unit (self->yield, made_unit (self));
}

static void
makes_cb (SteadRecipeMade *self)
{
  gboolean is_new = made_item (self) == NULL;

  if (self->produce == NULL)
    return;
  gtk_widget_set_visible (GTK_WIDGET (self->item_name), is_new);
  gtk_widget_set_visible (self->unit_box, is_new);
  unit_cb (self);
}

/* --- filling ------------------------------------------------------------------------------- */

void
stead_recipe_made_set_units (SteadRecipeMade *self,
                             SteadUnitSystem  system)
{
  static const SteadDimension dimensions[] = { STEAD_DIMENSION_COUNT, STEAD_DIMENSION_MASS, STEAD_DIMENSION_VOLUME };
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  g_return_if_fail (STEAD_IS_RECIPE_MADE (self));

  g_ptr_array_set_size (self->units, 0);
  for (gsize d = 0; d < G_N_ELEMENTS (dimensions); d++)
    {
      gsize n;
      const SteadUnit * const *list = stead_unit_list (dimensions[d], &n);

      for (gsize i = 0; i < n; i++)
        if (list[i]->system == system || dimensions[d] == STEAD_DIMENSION_COUNT)
          {
            g_ptr_array_add (self->units, (gpointer) list[i]);
            gtk_string_list_append (names, g_str_equal (list[i]->id, "ea") ? _("pieces") : stead_unit_symbol (list[i]));
          }
    }
  gtk_drop_down_set_model (self->unit, G_LIST_MODEL (names));
}

void
stead_recipe_made_set_items (SteadRecipeMade *self,
                             GPtrArray       *items,
                             gint64           item_id)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  g_autoptr(GPtrArray) produce = g_ptr_array_new ();
  guint chosen = 0;

  g_return_if_fail (STEAD_IS_RECIPE_MADE (self) && items != NULL);

  for (guint i = 0; i < items->len; i++)
    {
      SteadItem *item = items->pdata[i];

      if (item->kind != STEAD_ITEM_PRODUCE)
        continue;
      if (item->id == item_id)
        chosen = produce->len;
      g_ptr_array_add (produce, item);
      gtk_string_list_append (names, item->name);
    }
  gtk_string_list_append (names, _("something new…"));
  if (item_id == 0)
    chosen = produce->len;
  g_clear_pointer (&self->produce, g_ptr_array_unref);
  gtk_drop_down_set_model (self->makes, G_LIST_MODEL (names));
  g_clear_pointer (&self->items, g_ptr_array_unref);
  self->items = g_ptr_array_ref (items);
  self->produce = g_steal_pointer (&produce);
  gtk_drop_down_set_selected (self->makes, chosen);
  makes_cb (self);
}

void
stead_recipe_made_show_yield (SteadRecipeMade *self,
                              double           yield_base)
{
  g_return_if_fail (STEAD_IS_RECIPE_MADE (self));

  if (yield_base > 0)
    stead_field_show_quantity (self->yield, yield_base);
}

/* --- reading -------------------------------------------------------------------------------- */

gint64
stead_recipe_made_get_item_id (SteadRecipeMade *self)
{
  const SteadItem *item;

  g_return_val_if_fail (STEAD_IS_RECIPE_MADE (self), 0);

  item = made_item (self);
  return item != NULL ? item->id : 0;
}

gboolean
stead_recipe_made_read (SteadRecipeMade *self,
                        SteadRecipe     *recipe,
                        SteadItem       *fresh)
{
  const SteadItem *item;

  g_return_val_if_fail (STEAD_IS_RECIPE_MADE (self) && recipe != NULL && fresh != NULL, FALSE);

  item = made_item (self);
  recipe->item_id = item != NULL ? item->id : 0;
  if (!stead_field_read_quantity (self->yield, 0, &recipe->yield_base))
    return FALSE;
  if (!(recipe->yield_base > 0))
    {
      stead_field_set_error (self->yield, _("Enter how much the recipe makes: more than zero."));
      return FALSE;
    }
  if (item == NULL && stead_field_is_empty (self->item_name))
    {
      stead_field_set_error (self->item_name, _("Enter a name, such as “Breakfast bowl”."));
      return FALSE;
    }
  if (item == NULL)
    *fresh = (SteadItem) { .name = (char *) stead_field_get_text (self->item_name), .kind = STEAD_ITEM_PRODUCE,
                           .unit = made_unit (self), .reorder_base = NAN };
  return TRUE;
}

/* --- the object ------------------------------------------------------------------------------ */

static void
stead_recipe_made_dispose (GObject *object)
{
  SteadRecipeMade *self = STEAD_RECIPE_MADE (object);

  g_clear_pointer (&self->produce, g_ptr_array_unref);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_RECIPE_MADE);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_pointer (&self->units, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_recipe_made_parent_class)->dispose (object);
}

static void
stead_recipe_made_class_init (SteadRecipeMadeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_recipe_made_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-recipe-made.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeMade, yield);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeMade, item_name);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeMade, makes);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeMade, unit);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeMade, unit_box);
  gtk_widget_class_bind_template_callback (widget_class, makes_cb);
  gtk_widget_class_bind_template_callback (widget_class, unit_cb);
}

static void
stead_recipe_made_init (SteadRecipeMade *self)
{
  self->units = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}
