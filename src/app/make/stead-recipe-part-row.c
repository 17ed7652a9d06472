/* stead-recipe-part-row.c - one ingredient in the recipe dialog. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/make/stead-recipe-part-row.h"

#include "answer/stead-measures.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-sensible.h"

/* As the drop-down offers them. */
enum { READY, AS_BOUGHT };

struct _SteadRecipePartRow
{
  GtkWidget        parent_instance;

  GPtrArray       *items, *recipes;    /* of SteadItem, of SteadRecipe */
  SteadItem       *weighed;            /* (nullable): its words belong to @items and @source */
  char            *source;             /* (nullable): of the weights that are asked for */
  SteadUnitSystem  units;
  gint64           item_id, sub_id;    /* chosen */
  char            *shown;              /* (nullable): the amount as it was shown; */
  double           shown_amount;       /* it, with all its digits, */
  const SteadUnit *shown_unit;
  const SteadItem *shown_item;         /* and of what */
  gboolean         quiet;

  GtkDropDown     *item, *ready;
  SteadField      *amount, *yield, *note, *cup, *piece_weight;
  GtkWidget       *ask, *item_box;
  GtkLabel        *ask_text, *offer;
};

enum { REMOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadRecipePartRow, stead_recipe_part_row, GTK_TYPE_WIDGET)

static const SteadItem *
find_item (SteadRecipePartRow *self,
           gint64              id)
{
  for (guint i = 0; self->items != NULL && i < self->items->len; i++)
    if (((SteadItem *) self->items->pdata[i])->id == id)
      return self->items->pdata[i];
  return NULL;
}

static const SteadRecipe *
find_recipe (SteadRecipePartRow *self,
             gint64              id)
{
  for (guint i = 0; self->recipes != NULL && i < self->recipes->len; i++)
    if (((SteadRecipe *) self->recipes->pdata[i])->id == id)
      return self->recipes->pdata[i];
  return NULL;
}

/* What the amount is an amount of: the item, or what the recipe inside makes. */
static const SteadItem *
measured (SteadRecipePartRow *self)
{
  const SteadRecipe *sub = self->sub_id != 0 ? find_recipe (self, self->sub_id) : NULL;

  return find_item (self, sub != NULL ? sub->item_id : self->item_id);
}

/* --- the amount -------------------------------------------------------------------------- */

/* "1 1/2 cups" in whatever measures it; a bare number is in the item's unit. */
static gboolean
parse_amount (SteadRecipePartRow  *self,
              double              *out_amount,
              const SteadUnit    **out_unit,
              GError             **error)
{
  static const SteadDimension others[] = { STEAD_DIMENSION_VOLUME, STEAD_DIMENSION_MASS, STEAD_DIMENSION_COUNT };
  const SteadItem *item = measured (self);
  const char *text = stead_field_get_text (self->amount);
  double base;

  if (item == NULL)
    return FALSE;
  if (item == self->shown_item && g_strcmp0 (text, self->shown) == 0)
    {
      *out_amount = self->shown_amount;
      *out_unit = self->shown_unit;
      return TRUE;
    }
  if (stead_quantity_parse (text, item->unit->dimension, item->unit, &base, out_unit, error))
    {
      *out_amount = stead_quantity_from_base (base, *out_unit);
      return TRUE;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (others); i++)
    {
      const SteadUnit *fallback = stead_unit_default (others[i], self->units);

      if (others[i] != item->unit->dimension && stead_quantity_parse (text, others[i], fallback, &base, out_unit, NULL))
        {
          g_clear_error (error);
          *out_amount = stead_quantity_from_base (base, *out_unit);
          return TRUE;
        }
    }
  return FALSE;
}

static void
show_offer (SteadRecipePartRow *self,
            const SteadItem    *item,
            gboolean            cup,
            gboolean            piece)
{
  g_autoptr(SteadFoodMeasure) known = stead_measures_find (item->name);
  const SteadUnit *fine = stead_unit_by_id ("g");
  const char *source = NULL;
  g_autofree char *text = NULL;

  stead_field_set_unit (self->cup, fine);
  stead_field_set_unit (self->piece_weight, fine);
  if (cup && known != NULL && known->density_kg_l > 0)
    {
      stead_field_show_quantity (self->cup, stead_quantity_to_base (1, stead_unit_by_id ("cup")) * known->density_kg_l);
      source = known->density_source;
    }
  if (piece && known != NULL && known->piece_kg > 0)
    {
      stead_field_show_quantity (self->piece_weight, known->piece_kg);
      source = known->piece_source;
    }
  g_free (self->source);
  self->source = g_strdup (source);
  text = source != NULL ? g_strdup_printf (_("A usual weight is filled in (%s). Your own scale knows better."), source)
                        : g_strdup (_("No usual weight is known for it. Weigh it once."));
  stead_make_say (self->offer, text, FALSE);
}

/* Which weight is missing between the amount and the item's own measure. */
static void
missing_weights (const SteadItem *item,
                 const SteadUnit *unit,
                 gboolean        *cup,
                 gboolean        *piece)
{
  SteadDimension a = item->unit->dimension, b = unit->dimension;

  *cup = a != b && (a == STEAD_DIMENSION_VOLUME || b == STEAD_DIMENSION_VOLUME) && !(item->density_kg_l > 0);
  *piece = a != b && (a == STEAD_DIMENSION_COUNT || b == STEAD_DIMENSION_COUNT) && !(item->piece_kg > 0);
}

static void
check_measure (SteadRecipePartRow *self)
{
  const SteadItem *item = measured (self);
  const SteadUnit *unit = NULL;
  gboolean cup = FALSE, piece = FALSE, before = gtk_widget_get_visible (self->ask);
  double amount;
  g_autofree char *text = NULL;

  if (item != NULL && parse_amount (self, &amount, &unit, NULL))
    missing_weights (item, unit, &cup, &piece);
  gtk_widget_set_visible (self->ask, cup || piece);
  gtk_widget_set_visible (GTK_WIDGET (self->cup), cup);
  gtk_widget_set_visible (GTK_WIDGET (self->piece_weight), piece);
  if (!cup && !piece)
    return;
  /* Translators: an item follows */
  text = g_strdup_printf (_("“%s” is kept in another measure in the store room. Its weight leads from one to the other."), item->name);
  gtk_label_set_text (self->ask_text, text);
  if (!before)
    {
      self->quiet = TRUE;
      show_offer (self, item, cup, piece);
      self->quiet = FALSE;
    }
}

static void
amount_cb (SteadRecipePartRow *self)
{
  if (!self->quiet)
    check_measure (self);
}

/* A weight of one's own takes the place of the usual one. */
static void
weighed_cb (SteadRecipePartRow *self)
{
  if (self->quiet)
    return;
  g_free (self->source);
  self->source = g_strdup (_("weighed on the farm"));
}

static void
item_cb (SteadRecipePartRow *self)
{
  guint at = gtk_drop_down_get_selected (self->item);

  if (self->quiet || self->items == NULL || at == GTK_INVALID_LIST_POSITION)
    return;
  self->item_id = at < self->items->len ? ((SteadItem *) self->items->pdata[at])->id : 0;
  self->sub_id = at < self->items->len ? 0 : ((SteadRecipe *) self->recipes->pdata[at - self->items->len])->id;
  gtk_widget_hide (self->ask);
  check_measure (self);
}

static void
remove_cb (SteadRecipePartRow *self)
{
  g_signal_emit (self, signals[REMOVED], 0);
}

/* --- the object ------------------------------------------------------------------------------ */

static void
stead_recipe_part_row_dispose (GObject *object)
{
  SteadRecipePartRow *self = STEAD_RECIPE_PART_ROW (object);

  self->quiet = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_RECIPE_PART_ROW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_pointer (&self->recipes, g_ptr_array_unref);
  g_clear_pointer (&self->weighed, g_free);
  g_clear_pointer (&self->source, g_free);
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (stead_recipe_part_row_parent_class)->dispose (object);
}

static void
stead_recipe_part_row_class_init (SteadRecipePartRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_recipe_part_row_dispose;
  signals[REMOVED] = g_signal_new ("removed", STEAD_TYPE_RECIPE_PART_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-recipe-part.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, item);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, item_box);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, ready);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, amount);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, yield);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, note);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, ask);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, ask_text);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, offer);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, cup);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipePartRow, piece_weight);
  gtk_widget_class_bind_template_callback (widget_class, amount_cb);
  gtk_widget_class_bind_template_callback (widget_class, item_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
  gtk_widget_class_bind_template_callback (widget_class, weighed_cb);
}

static void
stead_recipe_part_row_init (SteadRecipePartRow *self)
{
  g_autoptr(GtkStringList) ways = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  /* Translators: how an ingredient was measured; in the order of the enum */
  gtk_string_list_append (ways, _("ready for the pot"));
  gtk_string_list_append (ways, _("as it was bought"));
  gtk_drop_down_set_model (self->ready, G_LIST_MODEL (ways));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
}

GtkWidget *
stead_recipe_part_row_new (SteadUnitSystem units)
{
  SteadRecipePartRow *self = g_object_new (STEAD_TYPE_RECIPE_PART_ROW, NULL);

  self->units = units;
  return GTK_WIDGET (self);
}

void
stead_recipe_part_row_share_width (SteadRecipePartRow *self,
                                   GtkSizeGroup       *group)
{
  g_return_if_fail (STEAD_IS_RECIPE_PART_ROW (self));
  gtk_size_group_add_widget (group, self->item_box);
}

static void
choose (SteadRecipePartRow *self,
        gint64              item_id,
        gint64              sub_id)
{
  guint at = 0;

  for (guint i = 0; sub_id == 0 && i < self->items->len; i++)
    if (((SteadItem *) self->items->pdata[i])->id == item_id)
      at = i;
  for (guint i = 0; sub_id != 0 && i < self->recipes->len; i++)
    if (((SteadRecipe *) self->recipes->pdata[i])->id == sub_id)
      at = self->items->len + i;
  gtk_drop_down_set_selected (self->item, at);
  item_cb (self);
}

void
stead_recipe_part_row_set_choices (SteadRecipePartRow *self,
                                   GPtrArray          *items,
                                   GPtrArray          *recipes)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  gint64 item_id = self->item_id, sub_id = self->sub_id;

  g_return_if_fail (STEAD_IS_RECIPE_PART_ROW (self));

  for (guint i = 0; i < items->len; i++)
    gtk_string_list_append (names, ((SteadItem *) items->pdata[i])->name);
  for (guint i = 0; i < recipes->len; i++)
    {
      /* Translators: another recipe, offered as an ingredient */
      g_autofree char *name = g_strdup_printf (_("%s (recipe)"), ((SteadRecipe *) recipes->pdata[i])->name);

      gtk_string_list_append (names, name);
    }
  g_ptr_array_ref (items);
  g_ptr_array_ref (recipes);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_pointer (&self->recipes, g_ptr_array_unref);
  self->items = items;
  self->recipes = recipes;
  self->quiet = TRUE;
  gtk_drop_down_set_model (self->item, G_LIST_MODEL (names));
  self->quiet = FALSE;
  choose (self, item_id, sub_id);
}

void
stead_recipe_part_row_show (SteadRecipePartRow    *self,
                            const SteadRecipePart *part)
{
  g_autofree char *amount = NULL;

  g_return_if_fail (STEAD_IS_RECIPE_PART_ROW (self) && part != NULL);

  choose (self, part->item_id, part->sub_id);
  amount = stead_sensible_format (part->amount, part->unit);
  stead_field_set_text (self->amount, amount);
  g_free (self->shown);
  self->shown = g_steal_pointer (&amount);
  self->shown_amount = part->amount;
  self->shown_unit = part->unit;
  self->shown_item = measured (self);
  gtk_drop_down_set_selected (self->ready, part->ready ? READY : AS_BOUGHT);
  if (!isnan (part->yield_frac))
    stead_field_show_number (self->yield, part->yield_frac * 100);
  stead_field_set_text (self->note, part->note != NULL ? part->note : "");
}

/* --- reading --------------------------------------------------------------------------------- */

static gboolean
read_weight (SteadField *field,
             double     *out_kg)
{
  if (!gtk_widget_get_visible (GTK_WIDGET (field)))
    return TRUE;
  if (!stead_field_read_quantity (field, NAN, out_kg))
    return FALSE;
  if (*out_kg > 0)
    return TRUE;
  stead_field_set_error (field, _("Enter what it weighs: more than zero."));
  return FALSE;
}

/* A copy of the item that borrows all its words: it only lives until it is saved. */
static gboolean
read_weights (SteadRecipePartRow *self,
              const SteadItem    *item)
{
  double cup_kg = NAN, piece_kg = NAN;

  g_clear_pointer (&self->weighed, g_free);
  if (!gtk_widget_get_visible (self->ask))
    return TRUE;
  if (!read_weight (self->cup, &cup_kg) || !read_weight (self->piece_weight, &piece_kg))
    return FALSE;
  self->weighed = g_memdup2 (item, sizeof (SteadItem));
  if (!isnan (cup_kg))
    self->weighed->density_kg_l = stead_density_from (1, stead_unit_by_id ("cup"), cup_kg);
  if (!isnan (piece_kg))
    self->weighed->piece_kg = piece_kg;
  self->weighed->measure_source = self->source;
  return TRUE;
}

static gboolean
read_amount (SteadRecipePartRow *self,
             SteadRecipePart    *part)
{
  g_autoptr(GError) error = NULL;

  if (stead_field_is_empty (self->amount) || measured (self) == NULL)
    {
      stead_field_set_error (self->amount, _("Enter an amount."));
      return FALSE;
    }
  if (!parse_amount (self, &part->amount, &part->unit, &error))
    {
      stead_field_set_error (self->amount, error->message);
      return FALSE;
    }
  if (part->amount > 0)
    return TRUE;
  stead_field_set_error (self->amount, _("Enter more than zero."));
  return FALSE;
}

SteadRecipePart *
stead_recipe_part_row_read (SteadRecipePartRow *self)
{
  g_autoptr(SteadRecipePart) part = stead_recipe_part_new ();

  g_return_val_if_fail (STEAD_IS_RECIPE_PART_ROW (self), NULL);

  if (!read_amount (self, part) || !stead_field_read_number (self->yield, NAN, &part->yield_frac)
      || !read_weights (self, measured (self)))
    return NULL;
  part->yield_frac /= stead_field_is_empty (self->yield) ? 1 : 100;
  if (!isnan (part->yield_frac) && !(part->yield_frac > 0 && part->yield_frac <= 1))
    {
      stead_field_set_error (self->yield, _("Enter a share above 0 and up to 100 %."));
      return NULL;
    }
  part->item_id = self->item_id;
  part->sub_id = self->sub_id;
  part->ready = gtk_drop_down_get_selected (self->ready) == READY;
  if (!stead_field_is_empty (self->note))
    part->note = g_strdup (stead_field_get_text (self->note));
  return g_steal_pointer (&part);
}

SteadItem *
stead_recipe_part_row_get_weighed (SteadRecipePartRow *self)
{
  g_return_val_if_fail (STEAD_IS_RECIPE_PART_ROW (self), NULL);
  return self->weighed;
}

/* --- what can be named ---------------------------------------------------------------------- */

/* What a kitchen uses stands before feed and bedding. */
static int
by_use (gconstpointer a,
        gconstpointer b)
{
  static const int order[] = {
    [STEAD_ITEM_INGREDIENT] = 0, [STEAD_ITEM_PRODUCE] = 0, [STEAD_ITEM_PACKAGING] = 1, [STEAD_ITEM_SUPPLY] = 2,
    [STEAD_ITEM_SEED] = 2, [STEAD_ITEM_FEED] = 3, [STEAD_ITEM_BEDDING] = 3, [STEAD_ITEM_LIVESTOCK] = 3,
  };
  const SteadItem *one = *(SteadItem * const *) a, *other = *(SteadItem * const *) b;
  int way = order[one->kind] - order[other->kind];

  return way != 0 ? way : g_utf8_collate (one->name, other->name);
}

GPtrArray *
stead_recipe_part_items (SteadStore  *store,
                         GError     **error)
{
  GPtrArray *items = stead_item_repo_list (store, error);

  if (items != NULL)
    g_ptr_array_sort (items, by_use);
  return items;
}

GPtrArray *
stead_recipe_part_recipes (SteadStore  *store,
                           gint64       recipe_id,
                           GError     **error)
{
  g_autoptr(GPtrArray) recipes = stead_recipe_repo_list (store, FALSE, error);

  for (guint i = 0; recipes != NULL && i < recipes->len; i++)
    if (((SteadRecipe *) recipes->pdata[i])->id == recipe_id)
      {
        g_ptr_array_remove_index (recipes, i);
        break;
      }
  return g_steal_pointer (&recipes);
}
