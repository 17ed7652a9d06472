/* stead-jump-goal.c - what the jump field can lead to. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-jump-goal.h"
#include "paper/stead-paper.h"
#include "store/stead-flock-repo.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-search-repo.h"
#include "store/stead-sale-repo.h"

#define N_HITS 12

static const struct
{
  const char  *kind;
  const char  *icon;
  SteadTarget  target;    /* NONE: the list of people */
} kinds[] = {
  [STEAD_HIT_FLOCK] = { NC_("jump", "Flock"), "stead-hen-symbolic", STEAD_TARGET_FLOCK },
  [STEAD_HIT_PRODUCT] = { NC_("jump", "Product"), "stead-egg-symbolic", STEAD_TARGET_PRODUCT },
  [STEAD_HIT_ITEM] = { NC_("jump", "Item"), "stead-feed-bag-symbolic", STEAD_TARGET_ITEM },
  [STEAD_HIT_LOT] = { NC_("jump", "Lot"), "stead-jar-symbolic", STEAD_TARGET_LOT },
  [STEAD_HIT_RECEIPT] = { NC_("jump", "Receipt"), "stead-receipt-symbolic", STEAD_TARGET_RECEIPT },
  [STEAD_HIT_ASSET] = { NC_("jump", "Thing that lasts"), "stead-coin-symbolic", STEAD_TARGET_ASSET },
  [STEAD_HIT_RECIPE] = { NC_("jump", "Recipe"), "stead-jar-symbolic", STEAD_TARGET_RECIPE },
  [STEAD_HIT_KITCHEN] = { NC_("jump", "Kitchen batch"), "stead-jar-symbolic", STEAD_TARGET_KITCHEN },
  [STEAD_HIT_SALE] = { NC_("jump", "Sale day"), "stead-coin-symbolic", STEAD_TARGET_SALE },
  [STEAD_HIT_CHECKLIST] = { NC_("jump", "Checklist"), "stead-thermometer-symbolic", STEAD_TARGET_CHECKLIST },
  [STEAD_HIT_PERSON] = { NC_("jump", "Person"), "stead-notebook-symbolic", STEAD_TARGET_PERSON },
};

static const struct
{
  const char *title;
  const char *action;
  const char *icon;
} commands[] = {
  { N_("Go to Today"), "win.go::today", "stead-today-symbolic" },
  { N_("Go to Raise"), "win.go::raise", "stead-hen-symbolic" },
  { N_("Go to Make"), "win.go::make", "stead-jar-symbolic" },
  { N_("Go to Check"), "win.go::check", "stead-thermometer-symbolic" },
  { N_("Go to Price"), "win.go::price", "stead-chart-symbolic" },
  { N_("Go to Sell"), "win.go::sell", "stead-coin-symbolic" },
  { N_("Go to Fund"), "win.go::fund", "stead-chart-symbolic" },
  { N_("Go to Keep"), "win.go::keep", "stead-receipt-symbolic" },
  { N_("New flock"), "win.new-flock", "stead-add-symbolic" },
  { N_("New product"), "win.new-product", "stead-add-symbolic" },
  { N_("New receipt"), "win.new-receipt", "stead-add-symbolic" },
  { N_("New item"), "win.new-item", "stead-add-symbolic" },
  { N_("Take a flock's log from a table (CSV)"), "win.import-log", "stead-table-symbolic" },
  { N_("Take receipts from a table (CSV)"), "win.import-receipts", "stead-table-symbolic" },
  { N_("Print a document"), "win.print", "stead-print-symbolic" },
  { N_("People"), "win.people", "stead-notebook-symbolic" },
  { N_("Settings"), "win.preferences", "stead-edit-symbolic" },
  { N_("Save a copy of the farm"), "win.save-copy", "stead-save-symbolic" },
  { N_("Open an earlier day"), "win.backups", "stead-undo-symbolic" },
  { N_("Open another farm"), "win.open", "stead-notebook-symbolic" },
  { N_("New farm"), "win.new-farm", "stead-add-symbolic" },
  { N_("Keys"), "app.keys", "stead-edit-symbolic" },
  { N_("Help"), "app.help", "stead-search-symbolic" },
};

void
stead_jump_goal_free (SteadJumpGoal *goal)
{
  g_free (goal->title);
  g_free (goal->action);
  g_free (goal->paper);
  g_free (goal->of);
  g_free (goal);
}

/* Words of @text start words of @title, case and accents aside. */
static gboolean
matches (const char *text,
         const char *title)
{
  return *text == '\0' || g_str_match_string (text, title, TRUE);
}

static void
add_hit (GPtrArray    *goals,
         SteadHitKind  kind,
         gint64        id,
         const char   *title)
{
  SteadJumpGoal *goal = g_new0 (SteadJumpGoal, 1);

  goal->title = g_strdup (title);
  goal->kind = g_dpgettext2 (GETTEXT_PACKAGE, "jump", kinds[kind].kind);
  goal->icon = kinds[kind].icon;
  goal->target = kinds[kind].target;
  goal->id = id;
  g_ptr_array_add (goals, goal);
}

static void
add_hits (GPtrArray  *goals,
          SteadStore *store,
          const char *text)
{
  g_autoptr(GPtrArray) hits = stead_search_repo_find (store, text, N_HITS, NULL);

  for (guint i = 0; hits != NULL && i < hits->len; i++)
    {
      const SteadHit *hit = hits->pdata[i];

      add_hit (goals, hit->kind, hit->id, hit->title);
    }
}

/* Nothing typed yet: the flocks and products, which people go to most. */
static void
add_near (GPtrArray  *goals,
          SteadStore *store)
{
  g_autoptr(GPtrArray) flocks = stead_flock_repo_list (store, FALSE, NULL);
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, FALSE, NULL);

  for (guint i = 0; flocks != NULL && i < flocks->len; i++)
    add_hit (goals, STEAD_HIT_FLOCK, ((SteadFlock *) flocks->pdata[i])->id, ((SteadFlock *) flocks->pdata[i])->name);
  for (guint i = 0; products != NULL && i < products->len; i++)
    add_hit (goals, STEAD_HIT_PRODUCT, ((SteadProduct *) products->pdata[i])->id,
             ((SteadProduct *) products->pdata[i])->name);
}

static void
add_paper (GPtrArray            *goals,
           const SteadPaperKind *kind,
           const char           *of,
           const char           *text)
{
  /* Translators: a document and what it is about: "Cost sheet: Eggs". */
  g_autofree char *title = of != NULL ? g_strdup_printf (C_("jump", "%1$s: %2$s"), _(kind->title), of)
                                      : g_strdup (_(kind->title));
  SteadJumpGoal *goal;

  if (!matches (text, title))
    return;
  goal = g_new0 (SteadJumpGoal, 1);
  goal->title = g_steal_pointer (&title);
  goal->kind = C_("jump", "Document");
  goal->icon = "stead-print-symbolic";
  goal->paper = g_strdup (kind->name);
  goal->of = g_strdup (of);
  g_ptr_array_add (goals, goal);
}

/* Only what has pages can be looked at; each once for every product or batch. */
static void
add_papers (GPtrArray  *goals,
            SteadStore *store,
            const char *text)
{
  gsize n_kinds;
  const SteadPaperKind *list = stead_paper_list (&n_kinds);
  g_autoptr(GPtrArray) flocks = stead_flock_repo_list (store, FALSE, NULL);
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (store, TRUE, NULL);
  g_autoptr(GPtrArray) kitchens = stead_kitchen_repo_list (store, TRUE, NULL);
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, FALSE, NULL);
  g_autoptr(GPtrArray) sales = stead_sale_repo_list (store, NULL);

  for (gsize i = 0; i < n_kinds; i++)
    {
      if ((list[i].formats & STEAD_FORMAT_PDF) == 0)
        continue;
      if (list[i].of == NULL)
        add_paper (goals, &list[i], NULL, text);
      else if (g_str_equal (list[i].of, "flock"))
        for (guint k = 0; flocks != NULL && k < flocks->len; k++)
          add_paper (goals, &list[i], ((SteadFlock *) flocks->pdata[k])->name, text);
      else if (g_str_equal (list[i].of, "batch"))
        for (guint k = 0; batches != NULL && k < batches->len; k++)
          add_paper (goals, &list[i], ((SteadBatch *) batches->pdata[k])->name, text);
      else if (g_str_equal (list[i].of, "kitchen"))
        for (guint k = 0; kitchens != NULL && k < kitchens->len; k++)
          add_paper (goals, &list[i], ((SteadKitchen *) kitchens->pdata[k])->batch.name, text);
      else if (g_str_equal (list[i].of, "sale"))
        for (guint k = 0; sales != NULL && k < sales->len; k++)
          {
            const SteadSale *sale = sales->pdata[k];
            g_autofree char *day = stead_day_format (sale->day, STEAD_DAY_STYLE_ISO);
            g_autofree char *of = g_strdup_printf ("%s %s", sale->name, day);

            add_paper (goals, &list[i], of, text);
          }
      else if (g_str_equal (list[i].of, "product"))
        for (guint k = 0; products != NULL && k < products->len; k++)
          add_paper (goals, &list[i], ((SteadProduct *) products->pdata[k])->name, text);
    }
}

static void
add_commands (GPtrArray  *goals,
              const char *text)
{
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      SteadJumpGoal *goal;

      if (!matches (text, _(commands[i].title)))
        continue;
      goal = g_new0 (SteadJumpGoal, 1);
      goal->title = g_strdup (_(commands[i].title));
      goal->kind = C_("jump", "Command");
      goal->icon = commands[i].icon;
      goal->action = g_strdup (commands[i].action);
      g_ptr_array_add (goals, goal);
    }
}

GPtrArray *
stead_jump_goals_find (SteadStore *store,
                       const char *text,
                       gboolean    papers_only)
{
  GPtrArray *goals = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_jump_goal_free);
  g_autofree char *bare = g_strstrip (g_strdup (text != NULL ? text : ""));

  g_return_val_if_fail (STEAD_IS_STORE (store), goals);

  if (!papers_only && *bare != '\0')
    add_hits (goals, store, bare);
  else if (!papers_only)
    add_near (goals, store);
  add_papers (goals, store, bare);
  if (!papers_only)
    add_commands (goals, bare);
  return goals;
}
