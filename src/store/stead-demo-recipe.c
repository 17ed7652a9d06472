/* stead-demo-recipe.c - the recipes of the demo farm, and what is bought for them. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "store/stead-demo-writer-private.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-lot-repo.h"

/* --- recipes ---------------------------------------------------------------------- */

/* "Potatoes:9:lb:ready:diced" */
static gboolean
add_part (SteadDemoWriter *writer,
          const char      *group,
          const char      *text,
          SteadRecipe     *recipe)
{
  g_auto(GStrv) words = g_strsplit (text, ":", 5);
  SteadRecipePart *part;

  if (g_strv_length (words) < 3 || stead_unit_by_id (words[2]) == NULL)
    {
      stead_demo_fault (&writer->story->reader, group, "parts");
      return FALSE;
    }
  part = stead_recipe_part_new ();
  part->item_id = stead_demo_id_of (writer, "item", words[0]);
  part->amount = stead_demo_number_of (&writer->story->reader, words[1]);
  part->unit = stead_unit_by_id (words[2]);
  part->ready = g_strcmp0 (words[3], "ready") == 0;
  part->note = words[3] != NULL && words[4] != NULL ? g_strdup (words[4]) : NULL;
  g_ptr_array_add (recipe->parts, part);
  return TRUE;
}

/* "Whisk and cook the eggs. ; 20 ; cook ; raw_egg ; food_temp:163-170:12": what is done,
 * minutes, the words of the limit tables, and what will be read, by minutes of the step. */
char **
stead_demo_step_words (SteadDemoWriter *writer,
                       const char      *group,
                       const char      *text)
{
  char **words = g_strsplit (text, ";", 5);

  for (char **word = words; *word != NULL; word++)
    g_strstrip (*word);
  if (g_strv_length (words) != 5)
    stead_demo_fault (&writer->story->reader, group, "steps");
  return words;
}

static void
add_step (SteadDemoWriter *writer,
          const char      *group,
          const char      *text,
          SteadRecipe     *recipe)
{
  g_auto(GStrv) words = stead_demo_step_words (writer, group, text);
  SteadRecipeStep *step;

  if (g_strv_length (words) != 5)
    return;
  step = stead_recipe_step_new ();
  step->text = g_strdup (words[0]);
  step->minutes = stead_demo_number_of (&writer->story->reader, words[1]);
  step->step = words[2][0] != '\0' ? g_strdup (words[2]) : NULL;
  step->food = words[3][0] != '\0' ? g_strdup (words[3]) : NULL;
  g_ptr_array_add (recipe->steps, step);
}

double
stead_demo_base_of (SteadDemoWriter *writer,
                    const char      *item,
                    double           quantity)
{
  g_autofree char *group = g_strconcat ("item ", item, NULL);
  const SteadUnit *unit = stead_demo_unit_of (writer, group);

  return unit != NULL ? stead_quantity_to_base (quantity, unit) : 0;
}

gboolean
stead_demo_write_recipe (SteadDemoWriter  *writer,
                         gconstpointer     what,
                         GError          **error)
{
  static const char * const kept[] = { "hot", "cold", "frozen", "room", NULL };
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadRecipe) recipe = stead_recipe_new ();
  g_autofree char *makes = stead_demo_text (reader, group, "makes");
  g_auto(GStrv) parts = stead_demo_list (reader, group, "parts");
  g_auto(GStrv) steps = stead_demo_list (reader, group, "steps");

  recipe->name = g_strdup (stead_demo_group_name (group));
  recipe->item_id = stead_demo_id_of (writer, "item", makes);
  recipe->yield_base = stead_demo_base_of (writer, makes, stead_demo_number (reader, group, "yield"));
  recipe->minutes = stead_demo_number (reader, group, "minutes");
  recipe->equipment = stead_demo_text_if (reader, group, "equipment");
  recipe->note = stead_demo_text_if (reader, group, "note");
  recipe->kept = (SteadKept) stead_demo_word_of (writer, group, "kept", kept);
  recipe->acid_added = stead_demo_number_if (reader, group, "acid_added", 0) > 0;
  recipe->tomato = stead_demo_number_if (reader, group, "tomato", 0) > 0;
  recipe->ph = stead_demo_number_if (reader, group, "ph", NAN);
  if (!isnan (recipe->ph))
    recipe->ph_on = stead_demo_day_at (writer, writer->at);
  for (char **part = parts; *part != NULL && add_part (writer, group, *part, recipe); part++)
    ;
  for (char **step = steps; *step != NULL; step++)
    add_step (writer, group, *step, recipe);
  if (!stead_demo_sound (writer, error) || !stead_recipe_repo_save (writer->store, recipe, error))
    return FALSE;
  stead_demo_set_id (writer, group, recipe->id);
  return TRUE;
}

/* --- the shopping ------------------------------------------------------------------------ */

/* What is bought today: the groups of items by the store that has them. */
typedef struct
{
  SteadDemoWriter *writer;
  GHashTable      *stores;   /* of GPtrArray, by supplier */
} Shopping;

static void
shopping_clear (Shopping *shopping)
{
  g_clear_pointer (&shopping->stores, g_hash_table_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Shopping, shopping_clear)

/* Puts an item on the list if no more than @base of it is there; what the farm makes
 * itself has no supplier. */
static gboolean
shop_for (Shopping    *shopping,
          const char  *name,
          double       base,
          GError     **error)
{
  SteadDemoWriter *writer = shopping->writer;
  g_autofree char *group = g_strconcat ("item ", name, NULL);
  g_autofree char *supplier = stead_demo_text_if (&writer->story->reader, group, "supplier");
  GPtrArray *list;
  SteadStock stock;

  if (supplier == NULL)
    return TRUE;
  if (!stead_lot_repo_stock (writer->store, stead_demo_id_of (writer, "item", name),
                             stead_demo_day_at (writer, writer->at), 1, &stock, error))
    return FALSE;
  if (stock.on_hand_base > base)
    return TRUE;
  list = g_hash_table_lookup (shopping->stores, supplier);
  if (list == NULL)
    {
      list = g_ptr_array_new_with_free_func (g_free);
      g_hash_table_insert (shopping->stores, g_steal_pointer (&supplier), list);
    }
  g_ptr_array_add (list, g_steal_pointer (&group));
  return TRUE;
}

/* Store by store, in the order of their names. */
static gboolean
go_shopping (Shopping  *shopping,
             GError   **error)
{
  g_autoptr(GList) suppliers = g_list_sort (g_hash_table_get_keys (shopping->stores), (GCompareFunc) strcmp);

  for (GList *l = suppliers; l != NULL; l = l->next)
    {
      GPtrArray *list = g_hash_table_lookup (shopping->stores, l->data);

      g_ptr_array_add (list, NULL);
      if (!stead_demo_buy_packs (shopping->writer, l->data, (const char * const *) list->pdata, error))
        return FALSE;
    }
  return TRUE;
}

/* What will be past its best-by day tomorrow is thrown out. */
static gboolean
clear_out (SteadDemoWriter        *writer,
           const SteadRecipeNeed  *need,
           GError                **error)
{
  g_autofree char *reason = stead_demo_text (&writer->story->reader, "kitchen", "waste");
  SteadDay day = stead_demo_day_at (writer, writer->at);
  g_autoptr(GPtrArray) lots = stead_kitchen_repo_lots (writer->store, need->item_id, day + 1, error);

  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      const SteadKitchenTake *take = lots->pdata[i];

      if (take->past && !stead_lot_repo_adjust (writer->store, take->lot_id, STEAD_MOVE_LOST, day, -take->base, reason,
                                                stead_demo_person_on (writer, writer->at), error))
        return FALSE;
    }
  return lots != NULL;
}

/* Enough of what the goods are packed in. */
static gboolean
shop_packs (Shopping    *shopping,
            const char  *group,
            GError     **error)
{
  SteadDemoReader *reader = &shopping->writer->story->reader;
  g_autofree char *sold_as = stead_demo_text (reader, group, "sold_as");
  g_autofree char *product = g_strconcat ("product ", sold_as, NULL);
  g_auto(GStrv) parts = stead_demo_list (reader, product, "parts");

  for (char **part = parts; *part != NULL; part++)
    if (!shop_for (shopping, *part, stead_demo_number (reader, group, "wanted"), error))
      return FALSE;
  return TRUE;
}

gboolean
stead_demo_shop (SteadDemoWriter  *writer,
                 gconstpointer     what,
                 GError          **error)
{
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  double factor = stead_demo_number (reader, group, "wanted") / stead_demo_number (reader, group, "yield");
  gint64 id = stead_demo_id_of (writer, "recipe", stead_demo_group_name (group));
  g_auto(Shopping) shopping = { writer, NULL };
  g_autoptr(GPtrArray) needs = NULL;

  if (!stead_demo_sound (writer, error))
    return FALSE;
  shopping.stores = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_ptr_array_unref);
  needs = stead_recipe_repo_needs (writer->store, id, factor, error);
  for (guint i = 0; needs != NULL && i < needs->len; i++)
    {
      const SteadRecipeNeed *need = needs->pdata[i];

      /* Measures are rounded to what a cook has, up to a tenth more. */
      if (!clear_out (writer, need, error) || !shop_for (&shopping, need->item_name, 1.1 * need->need_base, error))
        return FALSE;
    }
  return needs != NULL &&
         shop_packs (&shopping, group, error) &&
         stead_demo_sound (writer, error) &&
         go_shopping (&shopping, error);
}
