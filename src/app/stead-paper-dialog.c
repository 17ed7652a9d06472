/* stead-paper-dialog.c - a document's pages, to look at, print and save.
 *
 * A document that has no pages (a table for programs) shows the first lines of
 * its file instead.  What goes wrong while saving or printing is said in the
 * dialog; a document that cannot be made at all is told where it was asked for.
 * Once a document that tells of students is saved or printed, who gets it is asked.
 */
#include "config.h"

#include "app/stead-paper-dialog.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "app/show/stead-release-dialogs.h"
#include "app/stead-files.h"
#include "app/stead-paper-view.h"
#include "app/stead-ui.h"

#define STEAD_TYPE_PAPER_DIALOG (stead_paper_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadPaperDialog, stead_paper_dialog, STEAD, PAPER_DIALOG, GtkWindow)

#define LETTER_WIDTH_PT 612
#define FIRST_LINES 12

struct _SteadPaperDialog
{
  GtkWindow             parent_instance;

  SteadDesk            *desk;
  const SteadPaperKind *kind;
  char                 *of;         /* (nullable) */
  SteadPaperOptions     options;
  SteadCvp              cvp;        /* that options may point to */
  SteadLabelOptions     labels;     /* likewise */
  SteadPaper           *paper;      /* (nullable): a table has no pages */

  GtkWidget            *scrolled;
  GtkBox               *pages;
  GtkLabel             *message;
  GtkLabel             *where;
  GtkMenuButton        *others;
  GtkWidget            *print;
  GtkWidget            *save_pdf;
};

G_DEFINE_FINAL_TYPE (SteadPaperDialog, stead_paper_dialog, GTK_TYPE_WINDOW)

/* In the order of the menu; two kinds of CSV. */
static const struct
{
  SteadFormat  format;
  gboolean     for_spreadsheet;
  const char  *id;
  const char  *ending;
  const char  *label;
} others[] = {
  { STEAD_FORMAT_PNG,  FALSE, "png",         ".png",  N_("PNG picture…") },
  { STEAD_FORMAT_SVG,  FALSE, "svg",         ".svg",  N_("SVG drawing…") },
  { STEAD_FORMAT_XLSX, FALSE, "xlsx",        ".xlsx", N_("XLSX spreadsheet…") },
  { STEAD_FORMAT_CSV,  TRUE,  "csv-local",   ".csv",  N_("CSV for my spreadsheet…") },
  { STEAD_FORMAT_CSV,  FALSE, "csv",         ".csv",  N_("CSV for other programs…") },
};

static void
tell (SteadPaperDialog *self,
      const char       *text,
      gboolean          good)
{
  gtk_label_set_text (self->message, text);
  gtk_widget_set_visible (GTK_WIDGET (self->message), TRUE);
  gtk_widget_remove_css_class (GTK_WIDGET (self->message), good ? "warn" : "good");
  gtk_widget_add_css_class (GTK_WIDGET (self->message), good ? "good" : "warn");
}

/* Who gets it belongs in the log, while it is known. */
static void
ask_who_gets_it (SteadPaperDialog *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);
  g_autoptr(SteadHandoutAnswer) handout = NULL;
  g_autoptr(GError) error = NULL;

  if (store == NULL || stead_store_is_read_only (store) || !stead_handout_is_personal (self->kind->name))
    return;
  handout = stead_handout_answer_new (store, self->kind->name, self->of, self->options.from, self->options.to, &error);
  if (handout == NULL)
    tell (self, error->message, FALSE);
  else if (handout->people->len > 0)
    stead_handout_dialog_show (GTK_WIDGET (self), self->desk, g_steal_pointer (&handout));
}

/* Saving -------------------------------------------------------------------------- */

typedef struct
{
  SteadPaperDialog *dialog;
  int               other;    /* index in others; -1: PDF */
} Saving;

static gboolean
write_file (SteadPaperDialog  *self,
            int                other,
            const char        *path,
            GError           **error)
{
  SteadPaperOptions options = self->options;
  SteadStore *store = stead_desk_get_store (self->desk);

  if (other < 0)
    return stead_paper_save_pdf (self->paper, path, error);
  if (store == NULL)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_CLOSED, _("The farm was closed in the meantime."));
      return FALSE;
    }
  options.for_spreadsheet = others[other].for_spreadsheet;
  return stead_paper_write (store, self->kind->name, self->of, &options, path, error);
}

static void
chosen_cb (const char *path,
           gpointer    data)
{
  g_autofree Saving *saving = data;
  g_autoptr(SteadPaperDialog) self = saving->dialog;
  const char *ending = saving->other < 0 ? ".pdf" : others[saving->other].ending;
  g_autofree char *full = NULL, *text = NULL;
  g_autoptr(GError) error = NULL;

  if (path == NULL || self->desk == NULL)
    return;
  full = g_str_has_suffix (path, ending) ? g_strdup (path) : g_strconcat (path, ending, NULL);
  if (write_file (self, saving->other, full, &error))
    text = g_strdup_printf (_("Saved: %s"), full);
  tell (self, text != NULL ? text : error->message, text != NULL);
  if (text != NULL)
    ask_who_gets_it (self);
}

/* A name put forward: the document and what it is of. */
static char *
propose_name (SteadPaperDialog *self,
              const char       *ending)
{
  char *name = self->of != NULL ? g_strconcat (self->kind->name, " ", self->of, ending, NULL)
                                : g_strconcat (self->kind->name, ending, NULL);

  return g_strdelimit (name, "/\\:", '-');
}

static void
ask_where (SteadPaperDialog *self,
           int               other)
{
  g_autofree char *name = propose_name (self, other < 0 ? ".pdf" : others[other].ending);
  Saving *saving = g_new (Saving, 1);

  *saving = (Saving) { g_object_ref (self), other };
  gtk_widget_set_visible (GTK_WIDGET (self->message), FALSE);
  stead_files_save (GTK_WIDGET (self), _("Save the document"), name, chosen_cb, saving);
}

static void
save_pdf_cb (SteadPaperDialog *self)
{
  ask_where (self, -1);
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  for (gsize i = 0; i < G_N_ELEMENTS (others); i++)
    if (g_str_equal (others[i].id, g_variant_get_string (parameter, NULL)))
      ask_where (STEAD_PAPER_DIALOG (widget), (int) i);
}

/* Printing --------------------------------------------------------------------------- */

static void
begin_print_cb (SteadPaperDialog  *self,
                GtkPrintContext   *context,
                GtkPrintOperation *operation)
{
  gtk_print_operation_set_n_pages (operation, stead_paper_get_n_pages (self->paper));
}

static void
draw_page_cb (SteadPaperDialog *self,
              GtkPrintContext  *context,
              int               page)
{
  stead_paper_draw_page (self->paper, page, gtk_print_context_get_cairo_context (context));
}

static void
print_done_cb (SteadPaperDialog        *self,
               GtkPrintOperationResult  result,
               GtkPrintOperation       *operation)
{
  g_autoptr(GError) error = NULL;

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    {
      gtk_print_operation_get_error (operation, &error);
      tell (self, error != NULL ? error->message : _("The document could not be printed."), FALSE);
    }
  else if (result == GTK_PRINT_OPERATION_RESULT_APPLY)
    {
      tell (self, _("Sent to the printer."), TRUE);
      ask_who_gets_it (self);
    }
}

static GtkPageSetup *
make_page_setup (SteadPaperDialog *self)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *size;
  double width, height;

  stead_paper_get_size (self->paper, &width, &height);
  size = gtk_paper_size_new (fabs (MIN (width, height) - LETTER_WIDTH_PT) < 2 ? GTK_PAPER_NAME_LETTER
                                                                              : GTK_PAPER_NAME_A4);
  gtk_page_setup_set_paper_size (setup, size);
  gtk_page_setup_set_orientation (setup, width > height ? GTK_PAGE_ORIENTATION_LANDSCAPE
                                                        : GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_paper_size_free (size);
  return setup;
}

static void
print_cb (SteadPaperDialog *self)
{
  g_autoptr(GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr(GtkPageSetup) setup = make_page_setup (self);
  g_autoptr(GError) error = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->message), FALSE);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_job_name (operation, stead_paper_get_title (self->paper));
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect_object (operation, "begin-print", G_CALLBACK (begin_print_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (operation, "draw-page", G_CALLBACK (draw_page_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (operation, "done", G_CALLBACK (print_done_cb), self, G_CONNECT_SWAPPED);
  if (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, GTK_WINDOW (self), &error)
      == GTK_PRINT_OPERATION_RESULT_ERROR)
    tell (self, error->message, FALSE);
}

/* Showing ---------------------------------------------------------------------------------- */

/* The page whose middle is nearest to the middle of what can be seen. */
static void
scrolled_cb (SteadPaperDialog *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scrolled));
  double middle = gtk_adjustment_get_value (adjustment) + gtk_adjustment_get_page_size (adjustment) / 2;
  double best = G_MAXDOUBLE;
  int page = 0, at = 0;
  g_autofree char *text = NULL;

  for (GtkWidget *view = gtk_widget_get_first_child (GTK_WIDGET (self->pages)); view != NULL;
       view = gtk_widget_get_next_sibling (view), page++)
    {
      graphene_rect_t bounds;

      if (gtk_widget_compute_bounds (view, GTK_WIDGET (self->pages), &bounds)
          && fabs ((double) (bounds.origin.y + bounds.size.height / 2) - middle) < best)
        {
          best = fabs ((double) (bounds.origin.y + bounds.size.height / 2) - middle);
          at = page;
        }
    }
  text = g_strdup_printf (_("Page %d of %d"), at + 1, MAX (page, 1));
  gtk_label_set_text (self->where, text);
}

static void
show_pages (SteadPaperDialog *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scrolled));

  for (int page = 0; page < stead_paper_get_n_pages (self->paper); page++)
    gtk_box_append (self->pages, stead_paper_view_new (self->paper, page));
  g_signal_connect_object (adjustment, "value-changed", G_CALLBACK (scrolled_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (adjustment, "changed", G_CALLBACK (scrolled_cb), self, G_CONNECT_SWAPPED);
  scrolled_cb (self);
}

/* The table's file as it would be, made beside the person's files. */
static char *
read_first_lines (SteadPaperDialog  *self,
                  GError           **error)
{
  g_autofree char *folder = g_dir_make_tmp ("steading-XXXXXX", error);
  g_autofree char *path = folder != NULL ? g_build_filename (folder, "look.csv", NULL) : NULL;
  g_autofree char *text = NULL;
  const char *end, *from;

  if (folder == NULL)
    return NULL;
  if (stead_paper_write (stead_desk_get_store (self->desk), self->kind->name, self->of, &self->options, path, error)
      && !g_file_get_contents (path, &text, NULL, error))
    text = NULL;
  g_unlink (path);
  g_rmdir (folder);
  if (text == NULL)
    return NULL;
  from = g_str_has_prefix (text, "\xef\xbb\xbf") ? text + 3 : text;
  end = from;
  for (int line = 0; line < FIRST_LINES && end != NULL && *end != '\0'; line++)
    end = strchr (end, '\n') != NULL ? strchr (end, '\n') + 1 : end + strlen (end);
  return g_strndup (from, (gsize) (end - from));
}

static gboolean
show_lines (SteadPaperDialog  *self,
            GError           **error)
{
  g_autofree char *text = read_first_lines (self, error);
  GtkWidget *label;

  if (text == NULL)
    return FALSE;
  label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, "monospace");
  gtk_box_append (self->pages, label);
  gtk_label_set_text (self->where, _("The first lines of the file"));
  return TRUE;
}

static gboolean
make_paper (SteadPaperDialog  *self,
            GError           **error)
{
  if ((self->kind->formats & STEAD_FORMAT_PDF) == 0)
    return show_lines (self, error);
  self->paper = stead_paper_new (stead_desk_get_store (self->desk), self->kind->name, self->of, &self->options, error);
  if (self->paper == NULL)
    return FALSE;
  show_pages (self);
  return TRUE;
}

static void
fill_menu (SteadPaperDialog *self)
{
  g_autoptr(GMenu) menu = g_menu_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (others); i++)
    if ((self->kind->formats & others[i].format) != 0)
      {
        g_autofree char *action = g_strconcat ("paper.save::", others[i].id, NULL);

        g_menu_append (menu, _(others[i].label), action);
      }
  gtk_menu_button_set_menu_model (self->others, G_MENU_MODEL (menu));
  stead_ui_name_menu (self->others);
  gtk_widget_set_visible (GTK_WIDGET (self->others), g_menu_model_get_n_items (G_MENU_MODEL (menu)) > 0);
  gtk_widget_set_visible (self->print, self->paper != NULL);
  gtk_widget_set_visible (self->save_pdf, self->paper != NULL);
}

static void
stead_paper_dialog_dispose (GObject *object)
{
  SteadPaperDialog *self = STEAD_PAPER_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_PAPER_DIALOG);
  g_clear_object (&self->paper);
  g_clear_object (&self->desk);
  g_clear_pointer (&self->of, g_free);
  G_OBJECT_CLASS (stead_paper_dialog_parent_class)->dispose (object);
}

static void
stead_paper_dialog_class_init (SteadPaperDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_paper_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-paper-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadPaperDialog, scrolled);
  gtk_widget_class_bind_template_child (widget_class, SteadPaperDialog, pages);
  gtk_widget_class_bind_template_child (widget_class, SteadPaperDialog, message);
  gtk_widget_class_bind_template_child (widget_class, SteadPaperDialog, where);
  gtk_widget_class_bind_template_child (widget_class, SteadPaperDialog, others);
  gtk_widget_class_bind_template_child (widget_class, SteadPaperDialog, print);
  gtk_widget_class_bind_template_child (widget_class, SteadPaperDialog, save_pdf);
  gtk_widget_class_bind_template_callback (widget_class, print_cb);
  gtk_widget_class_bind_template_callback (widget_class, save_pdf_cb);
  gtk_widget_class_install_action (widget_class, "paper.save", "s", save_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
stead_paper_dialog_init (SteadPaperDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
present (SteadPaperDialog *self,
         GtkWidget        *parent)
{
  GtkWidget *window = GTK_WIDGET (gtk_widget_get_root (parent));
  const char *title = self->paper != NULL ? stead_paper_get_title (self->paper) : _(self->kind->title);
  int height = gtk_widget_get_height (window);

  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_window_set_transient_for (GTK_WINDOW (self), GTK_WINDOW (window));
  if (height > 600)
    gtk_window_set_default_size (GTK_WINDOW (self), 820, height - 60);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (self->paper != NULL ? self->save_pdf : GTK_WIDGET (self->others));
}

/* @options: how; what it points to is copied. */
static void
show_paper (GtkWidget               *parent,
            SteadDesk               *desk,
            const char              *name,
            const char              *of,
            const SteadPaperOptions *options)
{
  SteadPaperDialog *self;
  g_autoptr(GError) error = NULL;

  self = g_object_new (STEAD_TYPE_PAPER_DIALOG, NULL);
  self->desk = g_object_ref (desk);
  self->kind = stead_paper_find (name);
  self->of = g_strdup (of);
  self->options = *options;
  if (options->cvp != NULL)
    {
      self->cvp = *options->cvp;
      self->options.cvp = &self->cvp;
    }
  if (options->labels != NULL)
    {
      self->labels = *options->labels;
      self->options.labels = &self->labels;
    }
  if (!make_paper (self, &error))
    {
      stead_files_tell (parent, _("The document cannot be made."), error->message);
      gtk_window_destroy (GTK_WINDOW (self));
      return;
    }
  fill_menu (self);
  present (self, parent);
}

void
stead_paper_dialog_show_tried (GtkWidget      *parent,
                               SteadDesk      *desk,
                               const char     *name,
                               const char     *of,
                               const SteadCvp *cvp)
{
  SteadPaperOptions options = { 0 };

  g_return_if_fail (GTK_IS_WIDGET (parent) && STEAD_IS_DESK (desk) && stead_desk_get_store (desk) != NULL);
  g_return_if_fail (name != NULL && stead_paper_find (name) != NULL);

  options.period = stead_desk_get_period (desk);
  options.cvp = cvp;
  show_paper (parent, desk, name, of, &options);
}

void
stead_paper_dialog_show_days (GtkWidget  *parent,
                              SteadDesk  *desk,
                              const char *name,
                              const char *of,
                              SteadDay    from,
                              SteadDay    to)
{
  SteadPaperOptions options = { .has_days = TRUE, .from = from, .to = to };

  g_return_if_fail (GTK_IS_WIDGET (parent) && STEAD_IS_DESK (desk) && stead_desk_get_store (desk) != NULL);
  g_return_if_fail (name != NULL && stead_paper_find (name) != NULL && from <= to);

  options.period = stead_desk_get_period (desk);
  show_paper (parent, desk, name, of, &options);
}

void
stead_paper_dialog_show_labels (GtkWidget               *parent,
                                SteadDesk               *desk,
                                const char              *of,
                                const SteadLabelOptions *labels)
{
  SteadPaperOptions options = { 0 };

  g_return_if_fail (GTK_IS_WIDGET (parent) && STEAD_IS_DESK (desk) && stead_desk_get_store (desk) != NULL);

  options.period = stead_desk_get_period (desk);
  options.labels = labels;
  show_paper (parent, desk, "labels", of, &options);
}

void
stead_paper_dialog_show (GtkWidget  *parent,
                         SteadDesk  *desk,
                         const char *name,
                         const char *of)
{
  stead_paper_dialog_show_tried (parent, desk, name, of, NULL);
}
