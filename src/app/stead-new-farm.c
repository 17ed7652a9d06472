/* stead-new-farm.c - from nothing to a first price.
 *
 * Invariants:
 *  1. The file is made at the end of the first step; each later step is one named
 *     change in it, so that leaving half way loses nothing that was confirmed.
 *  2. A step that cannot be taken stays, with the reason at its field.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <langinfo.h>
#include <locale.h>

#include "answer/stead-words.h"
#include "app/stead-field.h"
#include "app/stead-files.h"
#include "app/stead-new-farm-facts.h"
#include "app/stead-new-farm.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

struct _SteadNewFarm
{
  GtkWidget    parent_instance;

  GtkWidget   *step;          /* "Step 1 of 3" */
  GtkWidget   *question;
  GtkWidget   *stack;         /* "farm", "flock", "product" */
  GtkWidget   *error;
  GtkWidget   *skip;
  GtkWidget   *next;

  SteadField  *name;
  GtkWidget   *us;
  GtkWidget   *metric;
  GtkWidget   *currency;
  GtkWidget   *month;
  SteadField  *mday;
  GtkWidget   *place;

  SteadField  *flock_name;
  SteadField  *birds;
  SteadField  *came_on;
  SteadField  *age_weeks;
  SteadField  *bird_cost;
  SteadField  *eggs;

  SteadField  *supplier;
  SteadField  *bags;
  SteadField  *bag_weight;
  SteadField  *bags_cost;
  SteadField  *cartons;
  SteadField  *cartons_cost;
  GtkWidget   *pack;
  SteadField  *price;

  char        *folder;        /* where the file goes */
  char        *chosen;        /* (nullable): a path that the person chose */
  SteadStore  *store;         /* (nullable): until the first step is done */
  gint64       flock_id;      /* 0: the second step was skipped */
};

enum
{
  SIGNAL_MADE,
  SIGNAL_DONE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadNewFarm, stead_new_farm, GTK_TYPE_WIDGET)

static const SteadPack packs[] = { STEAD_PACK_DOZEN, STEAD_PACK_HALF_DOZEN, STEAD_PACK_TRAY };

static const char * const month_names[] = {
  N_("January"), N_("February"), N_("March"), N_("April"), NC_("month", "May"), N_("June"),
  N_("July"), N_("August"), N_("September"), N_("October"), N_("November"), N_("December"),
};

/* --- where the file goes -------------------------------------------------------------- */

static char *
file_path (SteadNewFarm *self)
{
  g_autofree char *name = g_strstrip (g_strdup (stead_field_get_text (self->name)));

  if (self->chosen != NULL)
    return g_strdup (self->chosen);
  g_strdelimit (name, "/\\:", '-');
  for (int i = 1;; i++)
    {
      g_autofree char *file = i == 1 ? g_strdup_printf ("%s.steading", *name != '\0' ? name : _("My farm"))
                                     : g_strdup_printf ("%s %d.steading", *name != '\0' ? name : _("My farm"), i);
      g_autofree char *path = g_build_filename (self->folder, file, NULL);

      if (!g_file_test (path, G_FILE_TEST_EXISTS))
        return g_steal_pointer (&path);
    }
}

static void
show_place (SteadNewFarm *self)
{
  g_autofree char *path = file_path (self);

  gtk_label_set_text (GTK_LABEL (self->place), path);
}

static void
place_chosen_cb (const char *path,
                 gpointer    data)
{
  g_autoptr(SteadNewFarm) self = data;

  if (path == NULL)
    return;
  g_free (self->chosen);
  self->chosen = g_str_has_suffix (path, ".steading") ? g_strdup (path) : g_strconcat (path, ".steading", NULL);
  show_place (self);
}

static void
choose_place_cb (SteadNewFarm *self)
{
  g_autofree char *path = file_path (self);
  g_autofree char *name = g_path_get_basename (path);

  stead_files_save (GTK_WIDGET (self), _("Where to keep the farm"), name, place_chosen_cb, g_object_ref (self));
}

/* --- the first step: the farm ----------------------------------------------------------- */

static gboolean
make_farm (SteadNewFarm  *self,
           GError       **error)
{
  g_autofree char *path = file_path (self);
  g_autoptr(SteadStore) store = NULL;
  SteadNewFarmFacts facts = { 0 };
  gint64 mday;

  if (!stead_field_read_text (self->name, &facts.name) || !stead_field_read_count (self->mday, 1, &mday))
    return FALSE;
  facts.units = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->metric)) ? STEAD_UNITS_METRIC : STEAD_UNITS_US;
  facts.currency = stead_currency_list ()[gtk_drop_down_get_selected (GTK_DROP_DOWN (self->currency))];
  facts.month = (int) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->month)) + 1;
  facts.mday = (int) MIN (mday, 31);
  if (stead_day_new (2027, facts.month, facts.mday) == STEAD_DAY_NONE)
    {
      stead_field_set_error (self->mday, _("This month has no such day."));
      return FALSE;
    }
  store = stead_store_create (path, facts.name, error);
  if (store == NULL || !stead_new_farm_save_settings (store, &facts, error))
    return FALSE;
  self->store = g_steal_pointer (&store);
  return TRUE;
}

/* What was said in the first step shapes the fields of the others. */
static void
prepare_later_steps (SteadNewFarm *self)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (self->store, NULL);
  SteadDay today = stead_store_get_today (self->store);
  gboolean metric = farm != NULL && farm->units == STEAD_UNITS_METRIC;
  SteadField *money[] = { self->bird_cost, self->bags_cost, self->cartons_cost, self->price };

  for (gsize i = 0; farm != NULL && i < G_N_ELEMENTS (money); i++)
    stead_field_set_currency (money[i], farm->currency);
  stead_field_set_today (self->came_on, today);
  stead_field_show_day (self->came_on, today);
  stead_field_set_unit (self->bag_weight, stead_unit_default (STEAD_DIMENSION_MASS,
                                                              metric ? STEAD_UNITS_METRIC : STEAD_UNITS_US));
  stead_field_set_text (self->bag_weight, metric ? "25" : "50");
}

/* --- the second step: a flock ---------------------------------------------------------------- */

static gboolean
save_flock (SteadNewFarm  *self,
            GError       **error)
{
  SteadNewFlockFacts facts = { 0 };
  SteadDay today = stead_store_get_today (self->store);
  gint64 age;

  if (!stead_field_read_text (self->flock_name, &facts.name)
      || !stead_field_read_count (self->birds, 30, &facts.birds)
      || !stead_field_read_day (self->came_on, today, &facts.came_on)
      || !stead_field_read_count (self->age_weeks, 17, &age)
      || !stead_field_read_money (self->bird_cost, 0, &facts.bird_cents)
      || !stead_field_read_count (self->eggs, -1, &facts.eggs_today))
    return FALSE;
  if (facts.birds < 1)
    {
      stead_field_set_error (self->birds, _("Enter one hen or more."));
      return FALSE;
    }
  if (facts.came_on > today)
    {
      stead_field_set_error (self->came_on, _("Enter today or a day before it."));
      return FALSE;
    }
  facts.age_weeks = (int) MIN (age, 500);
  return stead_new_farm_save_flock (self->store, &facts, &self->flock_id, error);
}

/* --- the third step: feed, cartons, a price ------------------------------------------------------ */

static gboolean
read_purchase (SteadField *count,
               SteadField *cost,
               gint64     *out_count,
               gint64     *out_cents)
{
  if (!stead_field_read_count (count, 0, out_count) || !stead_field_read_money (cost, -1, out_cents))
    return FALSE;
  if (*out_count > 0 && *out_cents < 0)
    {
      stead_field_set_error (cost, _("Enter what was paid for them, or 0 for a gift."));
      return FALSE;
    }
  return TRUE;
}

static gboolean
save_product (SteadNewFarm  *self,
              GError       **error)
{
  SteadNewProductFacts facts = { .flock_id = self->flock_id };
  gint64 bags, cartons;
  double bag_kg;

  if (!read_purchase (self->bags, self->bags_cost, &bags, &facts.feed_cents)
      || !stead_field_read_quantity (self->bag_weight, 0, &bag_kg)
      || !read_purchase (self->cartons, self->cartons_cost, &cartons, &facts.carton_cents)
      || !stead_field_read_money (self->price, -1, &facts.price_cents))
    return FALSE;
  facts.pack = packs[gtk_drop_down_get_selected (GTK_DROP_DOWN (self->pack))];
  facts.feed_kg = bag_kg * (double) bags;
  facts.cartons = cartons;
  facts.supplier = stead_field_get_text (self->supplier);
  if ((bags > 0 || cartons > 0) && stead_field_is_empty (self->supplier))
    {
      stead_field_set_error (self->supplier, _("Say who it was bought from; the receipt needs a name."));
      return FALSE;
    }
  return stead_new_farm_save_product (self->store, &facts, error);
}

/* --- from step to step ----------------------------------------------------------------------------- */

static const struct
{
  const char *name;
  const char *step;
  const char *question;
  const char *next;
  gboolean  (*save) (SteadNewFarm *self, GError **error);
} steps[] = {
  { "farm", N_("Step 1 of 3"), N_("What is the farm called?"), N_("Make the farm"), make_farm },
  { "flock", N_("Step 2 of 3"), N_("Which hens do you keep?"), N_("Add the flock"), save_flock },
  { "product", N_("Step 3 of 3"), N_("What do you buy, and what do you sell?"), N_("Finish"), save_product },
};

static gsize
present_step (SteadNewFarm *self)
{
  const char *name = gtk_stack_get_visible_child_name (GTK_STACK (self->stack));

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (g_strcmp0 (steps[i].name, name) == 0)
      return i;
  return 0;
}

static void
show_step (SteadNewFarm *self,
           gsize         i)
{
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), steps[i].name);
  gtk_label_set_text (GTK_LABEL (self->step), _(steps[i].step));
  gtk_label_set_text (GTK_LABEL (self->question), _(steps[i].question));
  gtk_button_set_label (GTK_BUTTON (self->next), _(steps[i].next));
  gtk_widget_set_visible (self->skip, i > 0);
  stead_ui_tell (GTK_LABEL (self->error), NULL);
  if (gtk_widget_get_root (GTK_WIDGET (self)) != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (i == 1 ? self->flock_name : self->supplier));
}

static void
go_on (SteadNewFarm *self,
       gsize         from)
{
  g_autoptr(SteadNewFarm) kept G_GNUC_UNUSED = g_object_ref (self);

  if (from + 1 < G_N_ELEMENTS (steps))
    show_step (self, from + 1);
  else
    g_signal_emit (self, signals[SIGNAL_DONE], 0, self->store);
}

static void
next_cb (SteadNewFarm *self)
{
  gsize i = present_step (self);
  g_autoptr(GError) error = NULL;

  stead_ui_tell (GTK_LABEL (self->error), NULL);
  if (!steps[i].save (self, &error))
    {
      stead_ui_tell (GTK_LABEL (self->error), error != NULL ? error->message : NULL);
      return;
    }
  if (i == 0)
    {
      prepare_later_steps (self);
      g_signal_emit (self, signals[SIGNAL_MADE], 0, self->store);
    }
  go_on (self, i);
}

static void
skip_cb (SteadNewFarm *self)
{
  go_on (self, present_step (self));
}

/* --- the object -------------------------------------------------------------------------------------- */

static void
stead_new_farm_dispose (GObject *object)
{
  SteadNewFarm *self = STEAD_NEW_FARM (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_NEW_FARM);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->store);
  g_clear_pointer (&self->folder, g_free);
  g_clear_pointer (&self->chosen, g_free);
  G_OBJECT_CLASS (stead_new_farm_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, step);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, question);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, stack);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, error);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, skip);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, next);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, name);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, us);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, metric);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, currency);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, month);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, mday);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, place);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, flock_name);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, birds);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, came_on);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, age_weeks);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, bird_cost);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, eggs);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, supplier);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, bags);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, bag_weight);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, bags_cost);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, cartons);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, cartons_cost);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, pack);
  gtk_widget_class_bind_template_child (widget_class, SteadNewFarm, price);
  gtk_widget_class_bind_template_callback (widget_class, choose_place_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_place);
  gtk_widget_class_bind_template_callback (widget_class, next_cb);
  gtk_widget_class_bind_template_callback (widget_class, skip_cb);
}

static void
stead_new_farm_class_init (SteadNewFarmClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_new_farm_dispose;
  signals[SIGNAL_MADE] = g_signal_new ("made", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, STEAD_TYPE_STORE);
  signals[SIGNAL_DONE] = g_signal_new ("done", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, STEAD_TYPE_STORE);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "newfarm");
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-new-farm.ui"));
  bind_children (widget_class);
}

static GtkStringList *
translated_months (void)
{
  GtkStringList *list = gtk_string_list_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (month_names); i++)
    gtk_string_list_append (list, i == 4 ? C_("month", "May") : _(month_names[i]));
  return list;
}

static GtkStringList *
pack_names (void)
{
  GtkStringList *list = gtk_string_list_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (packs); i++)
    gtk_string_list_append (list, stead_words_pack_name (packs[i]));
  return list;
}

static void
fill_lists (SteadNewFarm *self)
{
  g_autoptr(GtkStringList) months = translated_months ();
  g_autoptr(GtkStringList) names = pack_names ();
  g_autoptr(GtkStringList) currencies = gtk_string_list_new (stead_currency_list ());

  gtk_drop_down_set_model (GTK_DROP_DOWN (self->month), G_LIST_MODEL (months));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->month), 7);
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->pack), G_LIST_MODEL (names));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->currency), G_LIST_MODEL (currencies));
}

/* The measures of the person's region: 2 is the US customary system. */
static gboolean
region_is_metric (void)
{
  const char *measurement = nl_langinfo (_NL_MEASUREMENT_MEASUREMENT);

  return measurement != NULL && *measurement == 1 && g_strcmp0 (setlocale (LC_MEASUREMENT, NULL), "C") != 0
         && !g_str_has_prefix (setlocale (LC_MEASUREMENT, NULL), "C.");
}

static void
stead_new_farm_init (SteadNewFarm *self)
{
  const char *documents = g_get_user_special_dir (G_USER_DIRECTORY_DOCUMENTS);
  gboolean there = documents != NULL && g_file_test (documents, G_FILE_TEST_IS_DIR);

  gtk_widget_init_template (GTK_WIDGET (self));
  self->folder = g_strdup (there ? documents : g_get_home_dir ());
  fill_lists (self);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (region_is_metric () ? self->metric : self->us), TRUE);
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  show_place (self);
  show_step (self, 0);
}

GtkWidget *
stead_new_farm_new (void)
{
  return g_object_new (STEAD_TYPE_NEW_FARM, NULL);
}
