/* stead-batch-panel-rows.c - the lists of the panel, made of an answer. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-batch-panel-private.h"

#include "app/raise/stead-harvest-dialog.h"
#include "app/raise/stead-note-dialog.h"
#include "app/raise/stead-treatment-dialog.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "store/stead-item-repo.h"

/* The longer side of a picture in the list, in pixels. */
#define THUMB 168

static GtkWidget *
make_label (const char *text,
            float       xalign,
            gboolean    wraps)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  if (wraps)
    stead_ui_wrap (GTK_LABEL (label));
  gtk_widget_set_valign (label, GTK_ALIGN_BASELINE);
  return label;
}

static GtkWidget *
attach (GtkGrid    *grid,
        const char *text,
        int         column,
        int         row,
        float       xalign)
{
  GtkWidget *label = make_label (text != NULL ? text : "–", xalign, xalign == 0);

  if (xalign > 0)
    gtk_widget_add_css_class (label, "figure");
  gtk_grid_attach (grid, label, column, row, 1, 1);
  return label;
}

static void
attach_head (GtkGrid    *grid,
             const char *text,
             int         column,
             float       xalign)
{
  GtkWidget *label = make_label (text, xalign, TRUE);

  gtk_widget_add_css_class (label, "soft");
  gtk_widget_add_css_class (label, "small");
  gtk_grid_attach (grid, label, column, 0, 1, 1);
}

static void
empty_grid (GtkGrid *grid)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (grid))) != NULL)
    gtk_grid_remove (grid, child);
}

static void
empty_box (GtkBox *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}

/* A button that remembers which row it belongs to. */
static GtkWidget *
row_button (const char *label,
            const char *name,
            gint64      id,
            GCallback   pressed,
            GtkWidget  *panel,
            SteadDesk  *desk)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  gint64 *key = g_new (gint64, 1);

  *key = id;
  gtk_widget_add_css_class (button, "link");
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_set_valign (button, GTK_ALIGN_BASELINE);
  g_object_set_data_full (G_OBJECT (button), "id", key, g_free);
  g_object_set_data (G_OBJECT (button), "panel", panel);
  g_object_set_data_full (G_OBJECT (button), "desk", g_object_ref (desk), g_object_unref);
  stead_ui_name (button, name);
  g_signal_connect (button, "clicked", pressed, NULL);
  return button;
}

static gint64
button_id (GtkButton *button)
{
  return *(gint64 *) g_object_get_data (G_OBJECT (button), "id");
}

static SteadDesk *
button_desk (GtkButton *button)
{
  return g_object_get_data (G_OBJECT (button), "desk");
}

static GtkWidget *
button_panel (GtkButton *button)
{
  return g_object_get_data (G_OBJECT (button), "panel");
}

/* --- plan beside actual ------------------------------------------------------------- */

static const char *
tone_class (SteadTone tone)
{
  switch (tone)
    {
    case STEAD_TONE_GOOD: return "good";
    case STEAD_TONE_POOR: return "warn";
    case STEAD_TONE_PLAIN:
    default: return NULL;
    }
}

/* Color never stands alone: the better and the worse bear a sign too. */
static char *
toned_text (const char *text,
            SteadTone   tone)
{
  if (text == NULL || tone == STEAD_TONE_PLAIN)
    return g_strdup (text);
  return g_strconcat (tone == STEAD_TONE_GOOD ? "▲ " : "▼ ", text, NULL);
}

/* Without a plan there is no column for it, nor, once it is over, for the difference. */
static void
attach_plan_row (GtkGrid             *grid,
                 const SteadBatchRow *row,
                 int                  at,
                 gboolean             has_plan,
                 gboolean             has_end)
{
  g_autofree char *end = toned_text (row->end, row->tone);
  GtkWidget *label = attach (grid, row->what, 0, at, 0);
  int column = 1;

  gtk_widget_add_css_class (label, "soft");
  if (has_plan)
    attach (grid, row->planned, column++, at, 1);
  gtk_widget_add_css_class (attach (grid, row->actual, column++, at, 1), "strong");
  if (!has_end)
    return;
  label = attach (grid, end, column, at, 1);
  if (tone_class (row->tone) != NULL)
    gtk_widget_add_css_class (label, tone_class (row->tone));
}

void
stead_batch_panel_fill_plan (GtkGrid                *grid,
                             const SteadBatchAnswer *answer)
{
  gboolean has_end = answer->has_plan || !answer->is_over;
  int column = 1;

  empty_grid (grid);
  attach_head (grid, "", 0, 0);
  if (answer->has_plan)
    attach_head (grid, C_("column of a plan", "Planned"), column++, 1);
  attach_head (grid, answer->is_over ? C_("column of a plan", "Came") : C_("column of a plan", "So far"), column++, 1);
  if (has_end)
    attach_head (grid, stead_batch_answer_end_title (answer), column, 1);
  for (guint i = 0; i < answer->rows->len; i++)
    attach_plan_row (grid, answer->rows->pdata[i], (int) i + 1, answer->has_plan, has_end);
}

/* --- the review ----------------------------------------------------------------------- */

void
stead_batch_panel_fill_review (GtkBox                 *box,
                               const SteadBatchAnswer *answer)
{
  empty_box (box);
  for (guint i = 0; i < answer->review->len; i++)
    {
      GtkWidget *label = make_label (NULL, 0, TRUE);

      gtk_label_set_markup (GTK_LABEL (label), answer->review->pdata[i]);
      gtk_widget_set_valign (label, GTK_ALIGN_FILL);
      gtk_box_append (box, label);
    }
}

/* --- harvests --------------------------------------------------------------------------- */

static void
lot_cb (GtkButton *button)
{
  stead_desk_jump (button_desk (button), STEAD_TARGET_LOT, button_id (button));
}

static void
harvest_cb (GtkButton *button)
{
  stead_harvest_dialog_edit (button_panel (button), button_desk (button), button_id (button));
}

static void
add_harvest (GtkGrid                *grid,
             int                     row,
             const SteadBatchAnswer *answer,
             const SteadHarvest     *harvest,
             SteadDesk              *desk,
             GtkWidget              *panel)
{
  g_autoptr(SteadItem) item = harvest->item_id == 0 ? NULL
                              : stead_item_repo_get (stead_desk_get_store (desk), harvest->item_id, NULL);
  g_autofree char *day = stead_day_format (harvest->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *text = stead_batch_harvest_text (answer, harvest, item);
  g_autofree char *cost = harvest->lot_id == 0 ? NULL : stead_money_format (harvest->cost_cents, answer->farm->currency);
  g_autofree char *change = g_strdup_printf (_("Change the harvest of %s"), day);

  attach (grid, day, 0, row, 0);
  gtk_widget_set_hexpand (attach (grid, text, 1, row, 0), TRUE);
  if (harvest->lot_id != 0)
    {
      g_autofree char *name = g_strdup_printf (_("Lot %s: open it in Keep"), harvest->lot_code);

      gtk_grid_attach (grid, row_button (harvest->lot_code, name, harvest->lot_id, G_CALLBACK (lot_cb), panel, desk),
                       2, row, 1, 1);
    }
  attach (grid, cost, 3, row, 1);
  gtk_grid_attach (grid, row_button (_("Change…"), change, harvest->id, G_CALLBACK (harvest_cb), panel, desk),
                   4, row, 1, 1);
}

void
stead_batch_panel_fill_harvests (GtkGrid                *grid,
                                 const SteadBatchAnswer *answer,
                                 SteadDesk              *desk,
                                 GtkWidget              *panel)
{
  empty_grid (grid);
  for (guint i = 0; i < answer->harvests->len; i++)
    add_harvest (grid, (int) i, answer, answer->harvests->pdata[answer->harvests->len - 1 - i], desk, panel);
}

/* --- treatments ------------------------------------------------------------------------- */

static void
treatment_cb (GtkButton *button)
{
  gint64 *batch = g_object_get_data (G_OBJECT (button), "batch");

  stead_treatment_dialog_show (button_panel (button), button_desk (button), *batch, button_id (button));
}

static void
add_treatment (GtkBox               *box,
               const SteadTreatment *treatment,
               SteadDesk            *desk,
               GtkWidget            *panel)
{
  SteadDay today = stead_store_get_today (stead_desk_get_store (desk));
  g_autofree char *from = stead_day_format (treatment->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *text = stead_batch_treatment_text (treatment);
  g_autofree char *change = g_strdup_printf (_("Change the treatment of %s"), from);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = make_label (text, 0, TRUE);
  GtkWidget *button = row_button (_("Change…"), change, treatment->id, G_CALLBACK (treatment_cb), panel, desk);

  g_object_set_data_full (G_OBJECT (button), "batch", g_memdup2 (&treatment->batch_id, sizeof (gint64)), g_free);
  gtk_widget_set_hexpand (label, TRUE);
  if (treatment->day <= today && treatment->wait_until >= today)
    gtk_widget_add_css_class (label, "caution");
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (box, row);
}

void
stead_batch_panel_fill_treatments (GtkBox                 *box,
                                   const SteadBatchAnswer *answer,
                                   SteadDesk              *desk,
                                   GtkWidget              *panel)
{
  empty_box (box);
  for (guint i = 0; i < answer->treatments->len; i++)
    add_treatment (box, answer->treatments->pdata[i], desk, panel);
}

/* --- notes ---------------------------------------------------------------------------------- */

static void
note_cb (GtkButton *button)
{
  gint64 *batch = g_object_get_data (G_OBJECT (button), "batch");

  stead_note_dialog_show (button_panel (button), button_desk (button), *batch, button_id (button));
}

/* Returns: (nullable): the picture, small */
static GtkWidget *
make_thumb (SteadStore *store,
            gint64      picture_id,
            const char *name)
{
  g_autoptr(GBytes) jpeg = picture_id != 0 ? stead_picture_repo_get (store, picture_id, NULL) : NULL;
  g_autoptr(GdkTexture) texture = jpeg != NULL ? gdk_texture_new_from_bytes (jpeg, NULL) : NULL;
  GtkWidget *picture;

  if (texture == NULL)
    return NULL;
  picture = gtk_picture_new_for_paintable (GDK_PAINTABLE (texture));
  gtk_picture_set_alternative_text (GTK_PICTURE (picture), name);
  stead_ui_name (picture, name);
  gtk_widget_set_size_request (picture, THUMB, THUMB * 3 / 4);
  gtk_widget_set_halign (picture, GTK_ALIGN_START);
  return picture;
}

static void
add_note (GtkBox               *box,
          const SteadBatchNote *note,
          SteadDesk            *desk,
          GtkWidget            *panel)
{
  g_autofree char *day = stead_day_format (note->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *change = g_strdup_printf (_("Change the note of %s"), day);
  g_autofree char *picture_name = g_strdup_printf (_("Picture of %s"), day);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *head = make_label (day, 0, FALSE);
  GtkWidget *text = make_label (note->text != NULL ? note->text : "", 0, TRUE);
  GtkWidget *button = row_button (_("Change…"), change, note->id, G_CALLBACK (note_cb), panel, desk);
  GtkWidget *thumb = make_thumb (stead_desk_get_store (desk), note->picture_id, picture_name);

  g_object_set_data_full (G_OBJECT (button), "batch", g_memdup2 (&note->batch_id, sizeof (gint64)), g_free);
  gtk_widget_add_css_class (head, "soft");
  gtk_widget_add_css_class (head, "small");
  gtk_widget_set_visible (text, note->text != NULL);
  gtk_widget_set_valign (head, GTK_ALIGN_START);
  gtk_widget_set_valign (text, GTK_ALIGN_START);
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (words), head);
  gtk_box_append (GTK_BOX (words), text);
  gtk_widget_set_hexpand (words, TRUE);
  if (thumb != NULL)
    gtk_box_append (GTK_BOX (row), thumb);
  gtk_box_append (GTK_BOX (row), words);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (box, row);
}

void
stead_batch_panel_fill_notes (GtkBox    *box,
                              gint64     batch_id,
                              SteadDesk *desk,
                              GtkWidget *panel)
{
  g_autoptr(GPtrArray) notes = stead_batch_repo_notes (stead_desk_get_store (desk), batch_id, NULL);

  empty_box (box);
  for (guint i = 0; notes != NULL && i < notes->len; i++)
    add_note (box, notes->pdata[i], desk, panel);
}
