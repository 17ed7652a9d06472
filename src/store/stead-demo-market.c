/* stead-demo-market.c - the sale day to come on the demo farm, planned but not opened. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-demo-writer-private.h"
#include "store/stead-sale-repo.h"
#include "store/stead-sale-tally.h"

/* The parts of each of a list's entries, "Table:24.00"; a fault if there are fewer. */
static char **
parts_of (SteadDemoWriter *writer,
          const char      *group,
          const char      *key,
          const char      *text,
          guint            n)
{
  g_auto(GStrv) parts = g_strsplit (text, ":", (int) n);

  if (g_strv_length (parts) == n)
    return g_steal_pointer (&parts);
  stead_demo_fault (&writer->story->reader, group, key);
  return NULL;
}

/* "Eggs:72:50:70:95": how many are brought, and how many people may ask for. */
static void
add_goods (SteadDemoWriter *writer,
           const char      *group,
           SteadSale       *sale)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) goods = stead_demo_list (reader, group, "goods");

  for (char **text = goods; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (writer, group, "goods", *text, 5);
      SteadSaleGood *good;

      if (parts == NULL)
        return;
      good = stead_sale_good_new ();
      good->product_id = stead_demo_id_of (writer, "product", g_strstrip (parts[0]));
      good->price_cents = stead_product_repo_price_on (writer->store, good->product_id, sale->day, NULL);
      good->planned = stead_demo_number_of (reader, parts[1]);
      good->low = stead_demo_number_of (reader, parts[2]);
      good->likely = stead_demo_number_of (reader, parts[3]);
      good->high = stead_demo_number_of (reader, parts[4]);
      g_ptr_array_add (sale->goods, good);
    }
}

static void
add_costs (SteadDemoWriter *writer,
           const char      *group,
           SteadSale       *sale)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) costs = stead_demo_list (reader, group, "costs");

  for (char **text = costs; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (writer, group, "costs", *text, 2);
      SteadSaleCost *cost;

      if (parts == NULL)
        return;
      cost = g_new0 (SteadSaleCost, 1);
      cost->name = g_strdup (g_strstrip (parts[0]));
      cost->cents = stead_demo_cents_of (reader, parts[1]);
      cost->paid_cents = -1;
      g_ptr_array_add (sale->costs, cost);
    }
}

static gint64
student_on (SteadDemoWriter *writer,
            SteadDay         day,
            guint            nth)
{
  for (guint i = 0; i < writer->students->len; i++)
    {
      const SteadDemoStudent *student = writer->students->pdata[i];

      if (student->from <= day && day <= student->to && nth-- == 0)
        return student->id;
    }
  return writer->helper_id;
}

/* "510:645:Set up and sell": in the order of the students who are here. */
static void
add_shifts (SteadDemoWriter *writer,
            const char      *group,
            SteadSale       *sale)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) shifts = stead_demo_list (reader, group, "shifts");

  for (guint i = 0; shifts[i] != NULL; i++)
    {
      g_auto(GStrv) parts = parts_of (writer, group, "shifts", shifts[i], 3);
      SteadSaleShift *shift;

      if (parts == NULL)
        return;
      shift = g_new0 (SteadSaleShift, 1);
      shift->person_id = student_on (writer, sale->day, i);
      shift->from_min = (int) stead_demo_number_of (reader, parts[0]);
      shift->to_min = (int) stead_demo_number_of (reader, parts[1]);
      shift->duty = g_strdup (g_strstrip (parts[2]));
      g_ptr_array_add (sale->shifts, shift);
    }
}

/* "5.00:4". */
void
stead_demo_market_float (SteadDemoWriter *writer,
                         const char      *group,
                         SteadSale       *sale)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) faces = stead_demo_list (reader, group, "float");

  for (char **text = faces; *text != NULL; text++)
    {
      g_auto(GStrv) parts = parts_of (writer, group, "float", *text, 2);
      SteadCashPiece piece;

      if (parts == NULL)
        return;
      piece = (SteadCashPiece) { stead_demo_cents_of (reader, parts[0]), (gint64) stead_demo_number_of (reader, parts[1]) };
      g_array_append_val (sale->float_pieces, piece);
    }
}

static void
add_bring (SteadDemoWriter *writer,
           const char      *group,
           SteadSale       *sale)
{
  g_auto(GStrv) things = stead_demo_list (&writer->story->reader, group, "bring");

  for (char **text = things; *text != NULL; text++)
    {
      SteadSaleBring *thing = g_new0 (SteadSaleBring, 1);

      thing->text = g_strdup (*text);
      g_ptr_array_add (sale->bring, thing);
    }
}

/* Two people ordered eggs. */
static gboolean
add_orders (SteadDemoWriter  *writer,
            const SteadSale  *sale,
            GError          **error)
{
  const SteadSaleGood *first = sale->goods->pdata[0];

  for (int i = 0; i < 2; i++)
    {
      SteadSaleOrder order = { .sale_id = sale->id, .line_id = first->id, .units = 2 + i,
                               .who = (char *) (i == 0 ? "School office" : "Bus barn") };

      if (!stead_sale_order_save (writer->store, &order, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_sale (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  const char *group = what;
  g_autoptr(SteadSale) sale = stead_sale_new ();
  int weekday = (int) stead_demo_number (reader, group, "weekday");
  SteadDay from = writer->story->today + (int) stead_demo_number (reader, group, "days_ahead");

  sale->name = g_strdup (stead_demo_group_name (group));
  sale->day = from + (weekday - stead_day_weekday (from) + 7) % 7;
  sale->location = stead_demo_text (reader, group, "location");
  sale->opens_min = (int) stead_demo_number (reader, group, "opens");
  sale->closes_min = (int) stead_demo_number (reader, group, "closes");
  sale->account_id = stead_demo_cash_till (writer);
  add_goods (writer, group, sale);
  add_costs (writer, group, sale);
  add_shifts (writer, group, sale);
  stead_demo_market_float (writer, group, sale);
  add_bring (writer, group, sale);
  return stead_demo_sound (writer, error) &&
         stead_sale_repo_save (writer->store, sale, NULL, error) &&
         add_orders (writer, sale, error);
}

/* The sale days that are planned, once all that lies before them is told. */
gboolean
stead_demo_plan_sales (SteadDemoWriter  *writer,
                       GError          **error)
{
  return stead_demo_write_groups (writer, "sale", write_sale, error);
}
