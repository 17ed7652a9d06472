/* stead-figure-row.c - break-even, margin, safety, leverage and target as tiles.
 *
 * A tile is a button: it opens the "Why?" that works out its figure.  The list
 * of whys is only kept up to date while it can be seen.
 */
#include "config.h"

#include "app/price/stead-figure-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"

typedef enum { EVEN, MARGIN, SAFETY, LEVERAGE, TARGET, N_TILES } TileId;

typedef struct
{
  GtkWidget *button;
  GtkWidget *name;
  GtkWidget *value;
  GtkWidget *more;
} Tile;

struct _SteadFigureRow
{
  GtkWidget        parent_instance;

  SteadPriceModel *model;
  GtkWidget       *box;
  Tile             tiles[N_TILES];
  GtkWidget       *expander;
  SteadWhyBox     *whys;
};

/* What a tile says now. */
typedef struct
{
  char *name, *value, *more;
} Words;

G_DEFINE_FINAL_TYPE (SteadFigureRow, stead_figure_row, GTK_TYPE_WIDGET)

static char *
money (const SteadPriceAnswer *answer,
       double                  cents)
{
  return stead_money_format (stead_money_round (cents), answer->cost->farm->currency);
}

static char *
units (const SteadPriceAnswer *answer,
       gint64                  count)
{
  return stead_words_units (answer->cost->product->pack, (double) count);
}

static Words
say_even (const SteadPriceAnswer *answer)
{
  const SteadCvpFigures *figures = &answer->figures;
  g_autofree char *sales = NULL;

  if (figures->even_whole_units < 0)
    return (Words) { g_strdup (_("Break-even")), g_strdup (_("never")), g_strdup (_("at this price")) };
  /* Of whole units, as the till will show it, and not of the exact crossing. */
  sales = money (answer, answer->cvp.price_cents * (double) figures->even_whole_units);
  /* Translators: %s is the money taken in at the break-even point. */
  return (Words) { g_strdup (_("Break-even")), units (answer, figures->even_whole_units),
                   g_strdup_printf (_("%s of sales"), sales) };
}

static Words
say_margin (const SteadPriceAnswer *answer)
{
  const SteadCvpFigures *figures = &answer->figures;
  g_autofree char *share = isnan (figures->margin_frac) ? NULL : stead_words_percent (figures->margin_frac, 1);

  /* Translators: %s is "a dozen": "Margin a dozen". */
  return (Words) { g_strdup_printf (_("Margin %s"), stead_words_per_unit (answer->cost->product->pack)),
                   money (answer, figures->margin_cents),
                   share != NULL ? g_strdup_printf (_("%s of the price"), share) : g_strdup ("") };
}

static Words
say_safety (const SteadPriceAnswer *answer)
{
  const SteadCvpFigures *figures = &answer->figures;
  g_autofree char *share = NULL;
  char *name = g_strdup (_("Margin of safety"));

  if (!(answer->cvp.planned_units > 0))
    return (Words) { name, g_strdup ("–"), g_strdup (_("nothing is planned")) };
  if (isnan (figures->safety_units))
    return (Words) { name, g_strdup (_("none")), g_strdup (_("at this price")) };
  share = stead_words_percent (figures->safety_frac, 1);
  return (Words) { name, units (answer, figures->safety_whole_units),
                   g_strdup_printf (_("%s of the plan"), share) };
}

static Words
say_leverage (const SteadPriceAnswer *answer)
{
  const SteadCvpFigures *figures = &answer->figures;
  g_autofree char *number = NULL, *change = NULL;
  char *name = g_strdup (_("Leverage"));

  if (!(answer->cvp.planned_units > 0) || isnan (figures->leverage) || isinf (figures->leverage))
    return (Words) { name, g_strdup ("–"), g_strdup (_("no profit to compare with")) };
  if (figures->profit_cents < 0)
    return (Words) { name, g_strdup ("–"), g_strdup (_("the plan loses money")) };
  number = stead_number_format (figures->leverage, 1);
  change = stead_words_percent (figures->leverage / 10, 0);
  /* Translators: operating leverage: "2.8 times", then "10 % more sales, 28 % more profit". */
  return (Words) { name, g_strdup_printf (_("%s times"), number),
                   g_strdup_printf (_("a tenth more sold, %s more left"), change) };
}

static Words
say_target (const SteadPriceAnswer *answer)
{
  const SteadCvpFigures *figures = &answer->figures;
  gboolean wanted = answer->cvp.target_cents > 0;
  g_autofree char *target = money (answer, answer->cvp.target_cents);
  g_autofree char *price = NULL;
  char *more;
  char *value;

  if (!wanted)
    return (Words) { g_strdup (_("Target profit")), g_strdup ("–"), g_strdup (_("set one beside the price")) };
  value = figures->target_whole_units >= 0 ? units (answer, figures->target_whole_units) : g_strdup (_("never"));
  if (isnan (figures->needed_price_cents))
    more = g_strdup ("");
  else
    {
      /* A price is rounded up, or the plan would just miss the target. */
      price = money (answer, ceil (figures->needed_price_cents - 1e-6));
      /* Translators: the other way to the target: the plan as it is, at this price. */
      more = g_strdup_printf (_("or the plan at %s"), price);
    }
  /* Translators: %s is the profit wanted. */
  return (Words) { g_strdup_printf (_("To reach %s"), target), value, more };
}

static void
show_label (GtkWidget  *label,
            const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (label)), text) != 0)
    gtk_label_set_text (GTK_LABEL (label), text);
}

static void
show_tile (Tile  *tile,
           Words  words)
{
  /* Translators: a figure, its value, and more of it: "Break-even: 46 dozen, $207.00 of sales". */
  g_autofree char *said = *words.more != '\0' ? g_strdup_printf (_("%s: %s, %s"), words.name, words.value, words.more)
                                              : g_strdup_printf (_("%s: %s"), words.name, words.value);

  show_label (tile->name, words.name);
  show_label (tile->value, words.value);
  show_label (tile->more, words.more);
  stead_ui_name (tile->button, said);
  g_free (words.name);
  g_free (words.value);
  g_free (words.more);
}

static void
show_whys (SteadFigureRow *self)
{
  const SteadPriceAnswer *answer = self->model != NULL ? stead_price_model_get_answer (self->model) : NULL;
  g_autoptr(GPtrArray) whys = NULL;

  if (answer == NULL || !gtk_expander_get_expanded (GTK_EXPANDER (self->expander)))
    return;
  whys = stead_price_answer_whys (answer);
  stead_why_box_set (self->whys, whys);
}

static void
changed_cb (SteadFigureRow *self)
{
  static Words (* const say[N_TILES]) (const SteadPriceAnswer *) = {
    say_even, say_margin, say_safety, say_leverage, say_target
  };
  const SteadPriceAnswer *answer = stead_price_model_get_answer (self->model);

  if (answer == NULL)
    return;
  for (int i = 0; i < N_TILES; i++)
    show_tile (&self->tiles[i], say[i] (answer));
  show_whys (self);
}

static void
tile_clicked_cb (SteadFigureRow *self,
                 GtkWidget      *button)
{
  static const SteadPriceWhy whys[N_TILES] = {
    STEAD_PRICE_WHY_EVEN, STEAD_PRICE_WHY_MARGIN, STEAD_PRICE_WHY_SAFETY, STEAD_PRICE_WHY_LEVERAGE,
    STEAD_PRICE_WHY_TARGET
  };

  gtk_expander_set_expanded (GTK_EXPANDER (self->expander), TRUE);
  for (int i = 0; i < N_TILES; i++)
    if (self->tiles[i].button == button)
      stead_why_box_open (self->whys, stead_price_why_title (whys[i]));
}

/* Widget --------------------------------------------------------------------------------- */

static void
stead_figure_row_dispose (GObject *object)
{
  SteadFigureRow *self = STEAD_FIGURE_ROW (object);

  if (self->model != NULL)
    g_signal_handlers_disconnect_by_data (self->model, self);
  g_clear_object (&self->model);
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_figure_row_parent_class)->dispose (object);
}

static void
stead_figure_row_class_init (SteadFigureRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_figure_row_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "figures");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
add_label (GtkWidget  *box,
           const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  stead_ui_wrap (GTK_LABEL (label));
  gtk_label_set_max_width_chars (GTK_LABEL (label), 14);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static Tile
make_tile (SteadFigureRow *self,
           GtkWidget      *row)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  Tile tile = { .button = gtk_button_new () };

  tile.name = add_label (box, "name");
  tile.value = add_label (box, "value");
  tile.more = add_label (box, "more");
  gtk_button_set_child (GTK_BUTTON (tile.button), box);
  gtk_widget_add_css_class (tile.button, "tile");
  gtk_widget_set_tooltip_text (tile.button, _("Why?"));
  g_signal_connect_swapped (tile.button, "clicked", G_CALLBACK (tile_clicked_cb), self);
  gtk_box_append (GTK_BOX (row), tile.button);
  return tile;
}

static void
stead_figure_row_init (SteadFigureRow *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
  for (int i = 0; i < N_TILES; i++)
    self->tiles[i] = make_tile (self, row);
  self->expander = stead_why_box_new_folded (&self->whys);
  g_signal_connect_swapped (self->expander, "notify::expanded", G_CALLBACK (show_whys), self);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self->box), row);
  gtk_box_append (GTK_BOX (self->box), self->expander);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
stead_figure_row_new (SteadPriceModel *model)
{
  SteadFigureRow *self;

  g_return_val_if_fail (STEAD_IS_PRICE_MODEL (model), NULL);

  self = g_object_new (STEAD_TYPE_FIGURE_ROW, NULL);
  self->model = g_object_ref (model);
  g_signal_connect_swapped (model, "changed", G_CALLBACK (changed_cb), self);
  changed_cb (self);
  return GTK_WIDGET (self);
}
