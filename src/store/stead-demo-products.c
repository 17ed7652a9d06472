/* stead-demo-products.c - what is sold, and how its price went. */
#include "config.h"

#include <string.h>

#include "store/stead-demo-writer-private.h"
#include "store/stead-product-repo.h"

static gboolean
add_parts (SteadDemoWriter *writer,
           const char      *group,
           SteadProduct    *product)
{
  g_auto(GStrv) parts = stead_demo_list (&writer->story->reader, group, "parts");

  for (char **part = parts; *part != NULL; part++)
    {
      SteadProductPart one = { stead_demo_id_of (writer, "item", *part), 1 };

      g_array_append_val (product->parts, one);
    }
  return TRUE;
}

/* "Table:24.00", or "Second table:24.00:90". */
static void
add_stall_cost (SteadDemoWriter *writer,
                SteadProduct    *product,
                const char      *text)
{
  g_auto(GStrv) parts = g_strsplit (text, ":", 3);
  SteadStallCost *cost;

  if (g_strv_length (parts) < 2)
    return;
  cost = g_new0 (SteadStallCost, 1);
  cost->name = g_strdup (parts[0]);
  cost->cents = stead_demo_cents_of (&writer->story->reader, parts[1]);
  cost->per_units = parts[2] != NULL ? (gint64) stead_demo_number_of (&writer->story->reader, parts[2]) : 0;
  g_ptr_array_add (product->stall_costs, cost);
}

static void
add_stall_costs (SteadDemoWriter *writer,
                 const char      *group,
                 SteadProduct    *product)
{
  g_auto(GStrv) costs = stead_demo_list (&writer->story->reader, group, "stall");
  g_autofree char *step = stead_demo_text_if (&writer->story->reader, group, "step");

  for (char **cost = costs; *cost != NULL; cost++)
    add_stall_cost (writer, product, *cost);
  if (step != NULL)
    add_stall_cost (writer, product, step);
}

static gboolean
write_product (SteadDemoWriter  *writer,
               gconstpointer     what,
               GError          **error)
{
  static const char * const packs[] = { "dozen", "half_dozen", "tray", "piece", "pound", "kilogram", "jar", "pack", NULL };
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadProduct) product = stead_product_new ();
  g_autofree char *fish = stead_demo_text_if (reader, group, "fish");
  g_autofree char *crop = stead_demo_text_if (reader, group, "crop");
  g_autofree char *item = stead_demo_text_if (reader, group, "item");
  gboolean cooked = stead_demo_number_if (reader, group, "cooked", 0) > 0;

  product->name = g_strdup (stead_demo_group_name (group));
  product->pack = (SteadPack) stead_demo_word_of (writer, group, "pack", packs);
  product->base_per_unit = stead_demo_number (reader, group, "eggs");
  product->batch_id = fish != NULL   ? stead_demo_id_of (writer, "fish", fish)
                      : crop != NULL ? stead_demo_id_of (writer, "crop", crop)
                      : cooked       ? 0
                                     : writer->flock_id;
  if (item != NULL)
    product->item_id = stead_demo_id_of (writer, "item", item);
  product->unsold_frac = stead_demo_number (reader, group, "unsold");
  product->pack_minutes = stead_demo_number (reader, group, "minutes");
  product->planned_units = (gint64) stead_demo_number (reader, group, "planned");
  product->target_cents = stead_demo_cents (reader, group, "target");
  add_parts (writer, group, product);
  add_stall_costs (writer, group, product);
  if (!stead_demo_sound (writer, error) || !stead_product_repo_save (writer->store, product, error))
    return FALSE;
  stead_demo_set_id (writer, group, product->id);
  return stead_demo_cash_begin_product (writer, group, product->id, error);
}

/* "42:4.00:Why" */
static gboolean
write_price (SteadDemoWriter  *writer,
             const char       *group,
             const char       *text,
             GError          **error)
{
  g_auto(GStrv) parts = g_strsplit (text, ":", 3);
  gint64 id = stead_demo_id_of (writer, "product", stead_demo_group_name (group));

  return stead_product_repo_set_price (writer->store, id, stead_demo_day_at (writer, writer->at),
                                       stead_demo_cents_of (&writer->story->reader, parts[1]), parts[2], error);
}

static gboolean
write_first_price (SteadDemoWriter  *writer,
                   gconstpointer     what,
                   GError          **error)
{
  const char * const *group_and_text = what;

  return write_product (writer, group_and_text[0], error) &&
         write_price (writer, group_and_text[0], group_and_text[1], error);
}

static gboolean
write_next_price (SteadDemoWriter  *writer,
                  gconstpointer     what,
                  GError          **error)
{
  const char * const *group_and_text = what;

  return write_price (writer, group_and_text[0], group_and_text[1], error);
}

/* A product begins with its first price. */
gboolean
stead_demo_live_prices (SteadDemoWriter  *writer,
                        GError          **error)
{
  g_auto(GStrv) groups = stead_demo_groups (&writer->story->reader, "product");

  for (char **group = groups; *group != NULL; group++)
    {
      g_auto(GStrv) prices = stead_demo_list (&writer->story->reader, *group, "prices");

      for (char **price = prices; *price != NULL; price++)
        {
          const char *what[] = { *group, *price };

          if ((int) g_ascii_strtod (*price, NULL) != writer->at)
            continue;
          if (strchr (*price, ':') == NULL)
            stead_demo_fault (&writer->story->reader, *group, "prices");
          if (!stead_demo_sound (writer, error) ||
              !stead_demo_act (writer, stead_demo_group_name (*group),
                               price == prices ? write_first_price : write_next_price, what, error))
            return FALSE;
        }
    }
  return TRUE;
}
