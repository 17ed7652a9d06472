/* stead-label-dialog.c - labels for what is in a lot: which pack, which blanks, how many.
 *
 * One label is seen as it will be printed, at each change.  Nothing in the farm
 * changes: the button leads to the sheet.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/keep/stead-label-dialog.h"

#include "app/stead-field.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"

#define PREVIEW_PAD 8

/* Of the grid: below what they work out. */
#define WHYS_ROW 3

struct _SteadLabelDialog
{
  SteadDialog           parent_instance;

  SteadLot             *lot;
  SteadLabelAnswer     *answer;   /* (nullable): could not be read */
  SteadPackLabelLayout  layout;
  GArray               *sheets;   /* of const SteadLabelSheet *: of the farm's paper */

  GtkLabel             *sentence;
  GtkLabel             *missing;
  GtkLabel             *caution;
  GtkDropDown          *kind;
  GtkDropDown          *sheet;
  SteadField           *panel, *first, *n;
  GtkDrawingArea       *preview;
  GtkGrid              *grid;
  SteadWhyBox          *whys;
};

G_DEFINE_FINAL_TYPE (SteadLabelDialog, stead_label_dialog, STEAD_TYPE_DIALOG)

static const SteadLabelSheet *
chosen_sheet (SteadLabelDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->sheet);

  return g_array_index (self->sheets, const SteadLabelSheet *, MIN (at, self->sheets->len - 1));
}

/* --- the preview -------------------------------------------------------------------- */

static void
draw_cb (GtkDrawingArea *area,
         cairo_t        *cr,
         int             width,
         int             height,
         gpointer        data)
{
  SteadLabelDialog *self = data;
  const SteadLabelSheet *sheet = chosen_sheet (self);
  SteadPackLabelWords words;
  double scale = MIN ((width - 2 * PREVIEW_PAD) / sheet->width, (height - 2 * PREVIEW_PAD) / sheet->height);

  cairo_translate (cr, (width - scale * sheet->width) / 2, (height - scale * sheet->height) / 2);
  cairo_scale (cr, scale, scale);
  stead_palette_set_source (cr, STEAD_SCHEME_PRINT, STEAD_ROLE_CARD, 1);
  cairo_rectangle (cr, 0, 0, sheet->width, sheet->height);
  cairo_fill (cr);
  if (self->answer == NULL || !self->layout.fits)
    return;
  stead_label_words (self->answer, &words);
  stead_pack_label_paint (cr, &words, &self->layout);
}

/* What is on the picture, for whoever cannot see it. */
static void
name_preview (SteadLabelDialog *self)
{
  g_autoptr(GString) text = g_string_new (NULL);
  SteadPackLabelWords words = { 0 };

  if (self->answer != NULL)
    stead_label_words (self->answer, &words);
  for (int part = 0; part < STEAD_N_TAG_PARTS; part++)
    if (words.text[part] != NULL)
      g_string_append_printf (text, text->len == 0 ? "%s" : "\n%s", words.text[part]);
  stead_ui_name (GTK_WIDGET (self->preview), text->str);
}

static void
say (GtkLabel   *label,
     const char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

static void
show_missing (SteadLabelDialog *self)
{
  g_autoptr(GString) text = g_string_new (NULL);

  for (guint i = 0; self->answer != NULL && i < self->answer->missing->len; i++)
    g_string_append_printf (text, i == 0 ? "%s" : "\n%s", (const char *) self->answer->missing->pdata[i]);
  if (self->answer != NULL && !self->layout.fits)
    g_string_append_printf (text, text->len == 0 ? "%s" : "\n%s",
                            _("The words do not fit on a label of this size in letters as high as the law asks. "
                              "Choose a larger label."));
  say (self->missing, text->str);
}

/* A number that is still being typed counts as none. */
static int
peek_count (SteadField *field)
{
  gint64 n = g_ascii_strtoll (stead_field_get_text (field), NULL, 10);

  return (int) CLAMP (n, 0, STEAD_LABELS_MAX);
}

static void
show_whys (SteadLabelDialog *self)
{
  g_autoptr(GPtrArray) whys = g_ptr_array_new ();
  g_autoptr(SteadWhy) pages = NULL;

  if (self->answer == NULL)
    return;
  pages = stead_label_sheet_why (chosen_sheet (self), peek_count (self->first), peek_count (self->n));
  g_ptr_array_extend (whys, self->answer->whys, NULL, NULL);
  g_ptr_array_add (whys, pages);
  stead_why_box_set (self->whys, whys);
}

static void
refresh (SteadLabelDialog *self)
{
  SteadStore *store = stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)));
  SteadLabelKind kind = (SteadLabelKind) MIN (gtk_drop_down_get_selected (self->kind), STEAD_N_LABEL_KINDS - 1);
  g_autoptr(GError) error = NULL;
  double panel = 0;

  if (store == NULL || !stead_field_read_number (self->panel, 0, &panel))
    return;
  g_clear_pointer (&self->answer, stead_label_answer_free);
  self->answer = stead_label_answer_new (store, self->lot->id, kind, panel, &error);
  if (self->answer == NULL)
    {
      stead_dialog_show_error (STEAD_DIALOG (self), error->message);
      return;
    }
  stead_label_fit (self->answer, chosen_sheet (self), &self->layout);
  gtk_label_set_markup (self->sentence, self->answer->sentence);
  say (self->caution, self->answer->caution);
  show_missing (self);
  name_preview (self);
  show_whys (self);
  gtk_widget_queue_draw (GTK_WIDGET (self->preview));
}

/* Another pack has another main panel. */
static void
kind_cb (SteadLabelDialog *self)
{
  guint kind = gtk_drop_down_get_selected (self->kind);

  if (self->lot == NULL || kind >= STEAD_N_LABEL_KINDS)
    return;
  stead_field_show_number (self->panel, stead_label_panel_usual ((SteadLabelKind) kind));
  refresh (self);
}

static void
sheet_cb (SteadLabelDialog *self)
{
  const SteadLabelSheet *sheet;

  if (self->lot == NULL)
    return;
  sheet = chosen_sheet (self);
  stead_field_show_count (self->n, sheet->columns * sheet->rows);
  refresh (self);
}

/* --- to the sheet ------------------------------------------------------------------- */

static gboolean
check_counts (SteadLabelDialog *self,
              gint64           *first,
              gint64           *n)
{
  const SteadLabelSheet *sheet = chosen_sheet (self);
  gboolean good = stead_field_read_count (self->first, 0, first);

  good &= stead_field_read_count (self->n, 0, n);
  if (good && *first >= sheet->columns * sheet->rows)
    {
      g_autofree char *text = g_strdup_printf (_("A page has only %d labels."), sheet->columns * sheet->rows);

      stead_field_set_error (self->first, text);
      return FALSE;
    }
  if (good && (*n < 1 || *n > STEAD_LABELS_MAX))
    {
      g_autofree char *text = g_strdup_printf (_("Print between 1 and %d labels at once."), STEAD_LABELS_MAX);

      stead_field_set_error (self->n, text);
      return FALSE;
    }
  return good;
}

static gboolean
stead_label_dialog_save (SteadDialog  *dialog,
                         GError      **error)
{
  SteadLabelDialog *self = STEAD_LABEL_DIALOG (dialog);
  SteadLabelOptions options = { .sheet = chosen_sheet (self)->id };
  gint64 first, n;

  if (!stead_field_read_number (self->panel, 0, &options.panel_in2) || !check_counts (self, &first, &n))
    return FALSE;
  refresh (self);
  if (self->answer == NULL || !self->layout.fits)
    return FALSE;
  options.kind = self->answer->kind;
  options.first = (int) first;
  options.n = (int) n;
  stead_paper_dialog_show_labels (GTK_WIDGET (self), stead_dialog_get_desk (dialog), self->lot->code, &options);
  return FALSE;   /* it stays: the next sheet may be for another pack */
}

/* --- the dialog ----------------------------------------------------------------------- */

static void
fill_lists (SteadLabelDialog *self,
            gboolean          metric)
{
  g_autoptr(GtkStringList) kinds = gtk_string_list_new (NULL);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  gsize n;
  const SteadLabelSheet *sheets = stead_label_sheet_list (&n);
  guint usual = 0;

  for (int kind = 0; kind < STEAD_N_LABEL_KINDS; kind++)
    gtk_string_list_append (kinds, stead_label_kind_name ((SteadLabelKind) kind));
  for (gsize i = 0; i < n; i++)
    {
      const SteadLabelSheet *sheet = &sheets[i];

      if (sheet->metric != metric)
        continue;
      if (sheet == stead_label_sheet_default (metric))
        usual = self->sheets->len;
      g_array_append_val (self->sheets, sheet);
      gtk_string_list_append (names, _(sheet->name));
    }
  gtk_drop_down_set_model (self->kind, G_LIST_MODEL (kinds));
  gtk_drop_down_set_model (self->sheet, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->sheet, usual);
}

/* What the words fit on is chosen at first. */
static void
choose_sheet (SteadLabelDialog *self,
              gboolean          metric)
{
  const SteadLabelSheet *sheet = self->answer != NULL ? stead_label_sheet_for (self->answer, metric) : NULL;

  for (guint i = 0; sheet != NULL && i < self->sheets->len; i++)
    if (g_array_index (self->sheets, const SteadLabelSheet *, i) == sheet)
      gtk_drop_down_set_selected (self->sheet, i);
}

static void
stead_label_dialog_dispose (GObject *object)
{
  SteadLabelDialog *self = STEAD_LABEL_DIALOG (object);

  g_clear_pointer (&self->lot, stead_lot_free);
  g_clear_pointer (&self->answer, stead_label_answer_free);
  G_OBJECT_CLASS (stead_label_dialog_parent_class)->dispose (object);
}

static void
stead_label_dialog_finalize (GObject *object)
{
  g_array_unref (STEAD_LABEL_DIALOG (object)->sheets);
  G_OBJECT_CLASS (stead_label_dialog_parent_class)->finalize (object);
}

static void
stead_label_dialog_class_init (SteadLabelDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_label_dialog_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_label_dialog_finalize;
  STEAD_DIALOG_CLASS (klass)->save = stead_label_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-label-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadLabelDialog, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadLabelDialog, missing);
  gtk_widget_class_bind_template_child (widget_class, SteadLabelDialog, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadLabelDialog, kind);
  gtk_widget_class_bind_template_child (widget_class, SteadLabelDialog, sheet);
  gtk_widget_class_bind_template_child (widget_class, SteadLabelDialog, panel);
  gtk_widget_class_bind_template_child (widget_class, SteadLabelDialog, first);
  gtk_widget_class_bind_template_child (widget_class, SteadLabelDialog, n);
  gtk_widget_class_bind_template_child (widget_class, SteadLabelDialog, preview);
  gtk_widget_class_bind_template_child (widget_class, SteadLabelDialog, grid);
  gtk_widget_class_bind_template_callback (widget_class, kind_cb);
  gtk_widget_class_bind_template_callback (widget_class, sheet_cb);
}

static void
stead_label_dialog_init (SteadLabelDialog *self)
{
  self->sheets = g_array_new (FALSE, FALSE, sizeof (const SteadLabelSheet *));
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_grid_attach (self->grid, stead_why_box_new_folded (&self->whys), 0, WHYS_ROW, 2, 1);
  g_signal_connect_swapped (self->first, "changed", G_CALLBACK (show_whys), self);
  g_signal_connect_swapped (self->n, "changed", G_CALLBACK (show_whys), self);
  gtk_drawing_area_set_draw_func (self->preview, draw_cb, self, NULL);
}

void
stead_label_dialog_show (GtkWidget      *parent,
                         SteadDesk      *desk,
                         const SteadLot *lot)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autofree char *title = NULL;
  g_autoptr(GError) error = NULL;
  SteadLabelDialog *self;
  SteadLot *copy = stead_lot_repo_get (store, lot->id, &error);
  SteadLabelKind kind;
  gboolean metric = stead_desk_get_farm (desk)->units == STEAD_UNITS_METRIC;

  if (copy == NULL || !stead_label_kind_for (store, copy, &kind, &error))
    {
      stead_desk_say (desk, error->message, FALSE);
      g_clear_pointer (&copy, stead_lot_free);
      return;
    }
  /* Translators: the code of a lot */
  title = g_strdup_printf (_("Labels for lot %s"), lot->code);
  self = g_object_new (STEAD_TYPE_LABEL_DIALOG, "title", title, NULL);
  fill_lists (self, metric);
  self->lot = copy;
  stead_field_show_count (self->first, 0);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_drop_down_set_selected (self->kind, kind);
  kind_cb (self);
  choose_sheet (self, metric);
  sheet_cb (self);
}
