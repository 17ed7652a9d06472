/* stead-limits-pane.c - the farm's own stricter limits of food safety.
 *
 * The tables of the program are a model code.  What the health department or the school
 * asks for besides stands here with its source; what asks for less is refused.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/check/stead-limits-pane.h"

#include "answer/stead-limit-card-answer.h"
#include "answer/stead-limits.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-quantity.h"
#include "store/stead-shown-repo.h"

struct _SteadLimitsPane
{
  GtkWidget   parent_instance;

  SteadDesk  *desk;

  GtkWidget  *rows, *foods, *cards;
  GtkLabel   *none, *shipped, *no_foods;
  SteadPick  *row;
  SteadField *value, *source, *where;
};

G_DEFINE_FINAL_TYPE (SteadLimitsPane, stead_limits_pane, GTK_TYPE_WIDGET)

/* Rows that departments and schools tighten; the ids are those of data/limits. */
static const struct { const char *id, *label; } kinds[] = {
  { "hold-hot-135", N_("Hot holding") },
  { "hold-cold-41", N_("Cold holding") },
  { "hold-cold-eggs-45", N_("Air round shell eggs") },
  { "cook-poultry-165", N_("Cooking poultry and stuffed food") },
  { "cook-egg-held-155", N_("Cooking eggs that are pooled or held") },
  { "cook-egg-order-145", N_("Cooking eggs for one order") },
  { "cook-ground-155", N_("Cooking ground meat and fish") },
  { "cook-fish-145", N_("Cooking whole fish and meat") },
  { "cook-plant-135", N_("Cooking plants that are held hot") },
  { "cool-stage-1", N_("Cooling, first mark") },
  { "cool-total", N_("Cooling, second mark") },
  { "reheat-own-165", N_("Heating again what was cooked here") },
  { "receive-cold-41", N_("Receiving cold food") },
};

static const SteadLimit *
chosen_row (SteadLimitsPane *self)
{
  gint64 chosen = stead_pick_get (self->row);

  return chosen > 0 ? stead_limit_table_by_id (stead_limits_get (), kinds[chosen - 1].id) : NULL;
}

static const char *
label_of (const char *id)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_str_equal (kinds[i].id, id))
      return _(kinds[i].label);
  return id;
}

static void
row_cb (SteadLimitsPane *self)
{
  const SteadLimit *limit = chosen_row (self);
  g_autofree char *is = stead_limits_text (limit), *source = stead_limits_source (limit);
  /* Translators: a limit, and where it is from. */
  g_autofree char *text = g_strdup_printf (_("The program asks for %s (%s). Yours may be stricter, never looser."), is, source);

  stead_make_say (self->shipped, text, FALSE);
  stead_field_set_error (self->value, NULL);
}

/* --- writing down --------------------------------------------------------------------- */

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  return stead_local_limit_repo_save (store, data, stead_limits_get (), error);
}

static gboolean
retire_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_local_limit_repo_retire (store, *(const gint64 *) data, error);
}

static void
save_cb (SteadLimitsPane *self)
{
  const SteadLimit *row = chosen_row (self);
  SteadLocalLimit limit = { .limit_id = (char *) row->id, .unit = (char *) row->unit, .time_s = NAN,
                            .from_day = stead_store_get_today (stead_desk_get_store (self->desk)),
                            .retired_on = STEAD_DAY_NONE };
  const SteadUnit *fahrenheit = stead_unit_by_id ("degF");
  g_autofree char *source = g_strdup (stead_field_get_text (self->source));
  g_autofree char *where = g_strdup (stead_field_get_text (self->where));
  g_autofree char *step = NULL;
  g_autoptr(GError) error = NULL;
  double base;

  if (!stead_quantity_parse (stead_field_get_text (self->value), STEAD_DIMENSION_TEMPERATURE,
                             stead_unit_default (STEAD_DIMENSION_TEMPERATURE, stead_desk_get_farm (self->desk)->units),
                             &base, NULL, &error))
    {
      stead_field_set_error (self->value, error->message);
      return;
    }
  if (stead_field_is_empty (self->source))
    {
      stead_field_set_error (self->source, _("Write down who asks for it: the health department, the school."));
      return;
    }
  /* Limits are kept in °F; a figure of one decimal stays one. */
  limit.value = round (stead_quantity_from_base (base, fahrenheit) * 1e6) / 1e6;
  limit.source = source;
  limit.where = *where != '\0' ? where : NULL;
  /* Translators: a step that can be undone: which limit. */
  step = g_strdup_printf (_("your own limit for “%s”"), label_of (row->id));
  if (!stead_desk_act (self->desk, step, save_act, &limit, &error))
    {
      stead_field_set_error (self->value, error->message);
      return;
    }
  stead_field_set_text (self->value, "");
  stead_field_set_text (self->source, "");
  stead_field_set_text (self->where, "");
}

static void
retire_cb (GtkButton *button,
           gpointer   pane)
{
  SteadLimitsPane *self = pane;
  const gint64 *id = g_object_get_data (G_OBJECT (button), "id");
  g_autoptr(GError) error = NULL;
  gint64 limit_id = *id;

  if (!stead_desk_act (self->desk, _("taking a limit of your own out of force"), retire_act, &limit_id, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

/* --- showing ------------------------------------------------------------------------------- */

static void
add_limit (SteadLimitsPane       *self,
           const SteadLocalLimit *limit)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *button = gtk_button_new_with_label (_("Take it out of force"));
  gboolean metric = stead_desk_get_farm (self->desk)->units == STEAD_UNITS_METRIC && g_str_equal (limit->unit, "F");
  g_autofree char *number = stead_number_format (metric ? (limit->value - 32) / 1.8 : limit->value, 1);
  g_autofree char *from = stead_day_format (limit->from_day, STEAD_DAY_STYLE_MEDIUM);
  const char *unit = metric ? "°C" : g_str_equal (limit->unit, "F") ? "°F" : limit->unit;
  /* Translators: what the limit is for, the figure, its unit. */
  g_autofree char *text = g_strdup_printf (_("%s: %s %s"), label_of (limit->limit_id), number, unit);
  g_autofree char *source = limit->where != NULL
    ? g_strdup_printf (_("%s, %s, since %s"), limit->source, limit->where, from)
    : g_strdup_printf (_("%s, since %s"), limit->source, from);
  /* Translators: which limit. */
  g_autofree char *name = g_strdup_printf (_("Take out of force: %s"), label_of (limit->limit_id));

  gtk_box_append (GTK_BOX (box), stead_make_label (text, "strong"));
  gtk_box_append (GTK_BOX (box), stead_make_label (source, "soft"));
  gtk_widget_set_hexpand (box, TRUE);
  stead_ui_name (button, name);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_object_set_data_full (G_OBJECT (button), "id", g_memdup2 (&limit->id, sizeof limit->id), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (retire_cb), self);
  gtk_box_append (GTK_BOX (row), box);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (GTK_BOX (self->rows), row);
}

/* --- the kitchen's own foods ---------------------------------------------------------------- */

static void
card_cb (GtkButton *button,
         gpointer   pane)
{
  SteadLimitsPane *self = pane;

  stead_paper_dialog_show (GTK_WIDGET (self), self->desk, g_object_get_data (G_OBJECT (button), "paper"), NULL);
}

static void
add_card_button (SteadLimitsPane *self,
                 const char      *label,
                 const char      *paper)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_object_set_data (G_OBJECT (button), "paper", (gpointer) paper);
  g_signal_connect (button, "clicked", G_CALLBACK (card_cb), self);
  gtk_box_append (GTK_BOX (self->cards), button);
}

static void
attach (SteadLimitsPane *self,
        const char      *text,
        const char      *style,
        int              column,
        int              row)
{
  GtkWidget *label = stead_make_label (text, style);

  gtk_widget_set_valign (label, GTK_ALIGN_START);
  gtk_widget_set_hexpand (label, column > 0);
  gtk_grid_attach (GTK_GRID (self->foods), label, column, row, 1, 1);
}

static void
add_food_limit (SteadLimitsPane           *self,
                const SteadLimitCardEntry *entry,
                int                        row)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new ();
  g_autofree char *foods = NULL;

  for (guint i = 0; i < entry->foods->len; i++)
    g_ptr_array_add (names, entry->foods->pdata[i]);
  g_ptr_array_add (names, NULL);
  foods = g_strjoinv (", ", (char **) names->pdata);
  attach (self, entry->works->pdata[0], "strong", 0, row);
  attach (self, entry->limits->pdata[0], NULL, 1, row);
  attach (self, foods, NULL, 2, row);
  attach (self, entry->source, "soft", 3, row);
}

static void
show_foods (SteadLimitsPane *self,
            SteadStore      *store)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadLimitCardAnswer) answer = stead_limit_card_answer_new (store, NULL, &error);

  stead_make_clear (self->foods);
  for (guint i = 0; answer != NULL && i < answer->entries->len; i++)
    add_food_limit (self, answer->entries->pdata[i], (int) i);
  gtk_widget_set_visible (self->foods, answer != NULL);
  gtk_widget_set_visible (self->cards, answer != NULL);
  stead_make_say (self->no_foods, error != NULL ? error->message : NULL, FALSE);
}

void
stead_limits_pane_refresh (SteadLimitsPane *self,
                           SteadDesk       *desk)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) limits = stead_local_limit_repo_list (store, stead_store_get_today (store), &error);

  g_return_if_fail (STEAD_IS_LIMITS_PANE (self));

  g_set_object (&self->desk, desk);
  stead_make_clear (self->rows);
  for (guint i = 0; limits != NULL && i < limits->len; i++)
    add_limit (self, limits->pdata[i]);
  gtk_widget_set_visible (self->rows, gtk_widget_get_first_child (self->rows) != NULL);
  stead_make_say (self->none, error != NULL ? error->message
                  : limits->len == 0 ? _("None yet. The limits of the model code hold, each with its source.") : NULL, FALSE);
  show_foods (self, store);
  row_cb (self);
}

/* --- the object ---------------------------------------------------------------------------------- */

static void
stead_limits_pane_dispose (GObject *object)
{
  SteadLimitsPane *self = STEAD_LIMITS_PANE (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_limits_pane_parent_class)->dispose (object);
}

static void
stead_limits_pane_class_init (SteadLimitsPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_limits_pane_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
make_form (SteadLimitsPane *self,
           GtkWidget       *card)
{
  GtkWidget *save = gtk_button_new_with_label (_("Save the limit"));
  GtkWidget *fields = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->row = STEAD_PICK (stead_pick_new (_("What it is for")));
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    stead_pick_append (self->row, (gint64) i + 1, _(kinds[i].label));
  stead_pick_show (self->row, 1);
  g_signal_connect_swapped (self->row, "changed", G_CALLBACK (row_cb), self);
  self->shipped = GTK_LABEL (stead_make_label ("", "soft"));
  self->value = STEAD_FIELD (stead_field_new (_("Your limit, a temperature"), STEAD_FIELD_TEXT));
  self->source = STEAD_FIELD (stead_field_new (_("Who asks for it"), STEAD_FIELD_TEXT));
  self->where = STEAD_FIELD (stead_field_new (_("Where it is written"), STEAD_FIELD_TEXT));
  gtk_widget_add_css_class (save, "primary");
  gtk_widget_set_halign (save, GTK_ALIGN_START);
  g_signal_connect_swapped (save, "clicked", G_CALLBACK (save_cb), self);
  gtk_widget_set_layout_manager (fields, stead_wrap_layout_new ());
  gtk_widget_set_halign (GTK_WIDGET (self->row), GTK_ALIGN_START);
  gtk_widget_set_size_request (GTK_WIDGET (self->source), 280, -1);
  gtk_widget_set_size_request (GTK_WIDGET (self->where), 280, -1);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->row));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->shipped));
  gtk_box_append (GTK_BOX (fields), GTK_WIDGET (self->value));
  gtk_box_append (GTK_BOX (fields), GTK_WIDGET (self->source));
  gtk_box_append (GTK_BOX (fields), GTK_WIDGET (self->where));
  gtk_box_append (GTK_BOX (card), fields);
  gtk_box_append (GTK_BOX (card), save);
}

static GtkWidget *
add_card (GtkWidget  *box,
          const char *head)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);

  gtk_widget_add_css_class (card, "card");
  gtk_box_append (GTK_BOX (card), stead_make_label (head, "heading"));
  gtk_box_append (GTK_BOX (box), card);
  return card;
}

static void
make_foods (SteadLimitsPane *self,
            GtkWidget       *card)
{
  self->foods = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (self->foods), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self->foods), 18);
  self->no_foods = GTK_LABEL (stead_make_label ("", NULL));
  self->cards = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_set_layout_manager (self->cards, stead_wrap_layout_new ());
  add_card_button (self, _("Wall card in English and Spanish…"), "limit-card");
  add_card_button (self, _("In English alone…"), "limit-card-english");
  add_card_button (self, _("In Spanish alone…"), "limit-card-spanish");
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->no_foods));
  gtk_box_append (GTK_BOX (card), self->foods);
  gtk_box_append (GTK_BOX (card), self->cards);
}

static void
stead_limits_pane_init (SteadLimitsPane *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *card;

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_margin_end (box, 6);
  gtk_box_append (GTK_BOX (box), stead_make_label (_("Your local health department decides first. Enter here what it, or "
                                                     "your school, asks for beyond the model code."), "caution"));
  card = add_card (box, _("Limits of your own, in force"));
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);
  self->none = GTK_LABEL (stead_make_label ("", NULL));
  gtk_box_append (GTK_BOX (card), self->rows);
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->none));
  make_form (self, add_card (box, _("A stricter limit")));
  make_foods (self, add_card (box, _("Limits of the kitchen's own foods")));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_widget_set_parent (scroller, GTK_WIDGET (self));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
}
