/* stead-xlsx.c - rows as a workbook. */
#include "config.h"

#include "core/stead-money.h"
#include "paper/stead-paper-error.h"
#include "paper/stead-xlsx.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <unistd.h>
#include <xlsxwriter.h>

#define MAX_ROWS 1048000u       /* a sheet holds 1,048,576, the head and the sums among them */
#define MANY_ROWS 20000u        /* from here on rows go to the disk as they come */
#define MAX_SHEET_NAME 31
#define MAX_TEXT 32767u         /* characters in a cell */
#define MAX_WIDTH 48.0

typedef struct
{
  lxw_workbook  *book;
  lxw_worksheet *sheet;
  lxw_format    *head;
  lxw_format    *sums[STEAD_CELL_MONEY + 1];
  lxw_format    *cells[STEAD_CELL_MONEY + 1];
} Writer;

/* The sheet's name: the title without what a name may not hold. */
static char *
sheet_name (const char *title)
{
  g_autofree char *clean = g_strdelimit (g_strdup (title), "[]:*?/\\'", ' ');

  return g_utf8_substring (clean, 0, MIN (g_utf8_strlen (clean, -1), MAX_SHEET_NAME));
}

/* "$"#,##0.00 from what the program itself writes before an amount. */
static char *
money_format (const char *currency)
{
  g_autofree char *nothing = stead_money_format (0, currency);
  g_autofree char *symbol = g_strndup (nothing, strcspn (nothing, "0123456789"));
  g_autoptr(GString) number = g_string_new ("#,##0");

  g_strdelimit (symbol, "\"", ' ');
  for (int i = 0; i < stead_currency_digits (currency); i++)
    g_string_append (number, i == 0 ? ".0" : "0");
  return g_strdup_printf ("\"%s\"%s;-\"%s\"%s", symbol, number->str, symbol, number->str);
}

static lxw_format *
add_format (lxw_workbook *book,
            const char   *number,
            gboolean      sum)
{
  lxw_format *format = workbook_add_format (book);

  if (number != NULL)
    format_set_num_format (format, number);
  if (sum)
    {
      format_set_bold (format);
      format_set_top (format, LXW_BORDER_THIN);
    }
  return format;
}

static void
make_formats (Writer     *writer,
              const char *currency)
{
  g_autofree char *money = money_format (currency);
  const char *numbers[] = { NULL, "yyyy-mm-dd", "#,##0", "#,##0.0##", money };

  for (int kind = STEAD_CELL_TEXT; kind <= STEAD_CELL_MONEY; kind++)
    {
      writer->cells[kind] = add_format (writer->book, numbers[kind], FALSE);
      writer->sums[kind] = add_format (writer->book, numbers[kind], TRUE);
    }
  writer->head = workbook_add_format (writer->book);
  format_set_bold (writer->head);
  format_set_text_wrap (writer->head);
  format_set_bottom (writer->head, LXW_BORDER_MEDIUM);
  format_set_align (writer->head, LXW_ALIGN_VERTICAL_BOTTOM);
}

static double
money_units (gint64      cents,
             const char *currency)
{
  return (double) cents / pow (10, stead_currency_digits (currency));
}

static void
write_text (Writer     *writer,
            lxw_row_t   row,
            lxw_col_t   column,
            const char *text)
{
  g_autofree char *cut = NULL;

  if (g_utf8_strlen (text, -1) > MAX_TEXT)
    text = cut = g_utf8_substring (text, 0, MAX_TEXT);
  worksheet_write_string (writer->sheet, row, column, text, writer->cells[STEAD_CELL_TEXT]);
}

static void
write_cell (Writer               *writer,
            const SteadLogAnswer *log,
            const SteadLogColumn *column,
            const SteadLogCell   *cell,
            lxw_row_t             row,
            lxw_col_t             at)
{
  lxw_format *format = writer->cells[column->kind];
  lxw_datetime day = { 0 };

  if (!cell->filled)
    return;
  switch (column->kind)
    {
    case STEAD_CELL_DAY:
      stead_day_split ((SteadDay) cell->whole, &day.year, &day.month, &day.day);
      worksheet_write_datetime (writer->sheet, row, at, &day, format);
      return;
    case STEAD_CELL_COUNT:
      worksheet_write_number (writer->sheet, row, at, (double) cell->whole, format);
      return;
    case STEAD_CELL_NUMBER:
      /* As many digits as the column has, so that the CSV says the same. */
      worksheet_write_number (writer->sheet, row, at,
                              round (cell->number * pow (10, column->digits)) / pow (10, column->digits), format);
      return;
    case STEAD_CELL_MONEY:
      worksheet_write_number (writer->sheet, row, at, money_units (cell->whole, log->currency), format);
      return;
    case STEAD_CELL_TEXT:
    default:
      write_text (writer, row, at, cell->text);
      return;
    }
}

/* Widths come first: with many rows a sheet is written as it goes. */
static void
set_widths (Writer               *writer,
            const SteadLogAnswer *log)
{
  for (guint column = 0; column < log->columns->len; column++)
    {
      const SteadLogColumn *its = stead_log_answer_column (log, column);
      double width = MIN ((double) g_utf8_strlen (its->title, -1) + 3, 18);

      width = MAX (width, its->kind == STEAD_CELL_DAY || its->kind == STEAD_CELL_MONEY ? 12 : 9);
      for (guint row = 0; its->kind == STEAD_CELL_TEXT && row < log->rows->len; row++)
        {
          const SteadLogCell *cell = stead_log_answer_cell (log, row, column);

          if (cell->filled)
            width = MAX (width, (double) g_utf8_strlen (cell->text, -1) + 2);
        }
      worksheet_set_column (writer->sheet, (lxw_col_t) column, (lxw_col_t) column, MIN (width, MAX_WIDTH), NULL);
    }
}

static void
write_head (Writer               *writer,
            const SteadLogAnswer *log)
{
  lxw_col_t last = (lxw_col_t) (log->columns->len - 1);

  for (guint column = 0; column < log->columns->len; column++)
    worksheet_write_string (writer->sheet, 0, (lxw_col_t) column, stead_log_answer_column (log, column)->title,
                            writer->head);
  worksheet_freeze_panes (writer->sheet, 1, 0);
  worksheet_repeat_rows (writer->sheet, 0, 0);
  worksheet_autofilter (writer->sheet, 0, 0, (lxw_row_t) log->rows->len, last);
  worksheet_set_landscape (writer->sheet);
  worksheet_fit_to_pages (writer->sheet, 1, 0);
  worksheet_set_footer (writer->sheet, "&L&A&R&P / &N");
}

static double
column_sum (const SteadLogAnswer *log,
            guint                 column)
{
  const SteadLogColumn *its = stead_log_answer_column (log, column);
  double sum = 0;

  for (guint row = 0; row < log->rows->len; row++)
    {
      const SteadLogCell *cell = stead_log_answer_cell (log, row, column);

      if (!cell->filled)
        continue;
      sum += its->kind == STEAD_CELL_NUMBER ? round (cell->number * pow (10, its->digits)) / pow (10, its->digits)
             : its->kind == STEAD_CELL_MONEY ? money_units (cell->whole, log->currency) : (double) cell->whole;
    }
  return sum;
}

static void
write_sums (Writer               *writer,
            const SteadLogAnswer *log)
{
  lxw_row_t row = (lxw_row_t) log->rows->len + 1;

  if (log->rows->len == 0)
    return;
  for (guint column = 0; column < log->columns->len; column++)
    {
      const SteadLogColumn *its = stead_log_answer_column (log, column);
      char formula[64];

      if (!its->sum)
        continue;
      g_snprintf (formula, sizeof formula, "=SUM(%c2:%c%u)", 'A' + (int) column, 'A' + (int) column,
                  log->rows->len + 1);
      worksheet_write_formula_num (writer->sheet, row, (lxw_col_t) column, formula, writer->sums[its->kind],
                                   column_sum (log, column));
    }
}

static void
set_properties (Writer               *writer,
                const SteadLogAnswer *log,
                const char           *title,
                const char           *author)
{
  lxw_doc_properties properties = {
    .title = (char *) title,
    .author = (char *) author,
    .comments = (char *) "",
    .created = (time_t) log->today * 86400 + 43200,
  };

  workbook_set_properties (writer->book, &properties);
}

/* To the right of the table, one under the other; they follow the cells. */
static void
add_chart (Writer               *writer,
           const SteadLogAnswer *log,
           const char           *name,
           int                   column,
           int                   place)
{
  lxw_chart *chart = workbook_add_chart (writer->book, LXW_CHART_COLUMN);
  lxw_chart_series *series = chart_add_series (chart, NULL, NULL);
  lxw_row_t last = (lxw_row_t) log->rows->len;

  chart_series_set_categories (series, name, 1, 0, last, 0);
  chart_series_set_values (series, name, 1, (lxw_col_t) column, last, (lxw_col_t) column);
  chart_series_set_name (series, stead_log_answer_column (log, (guint) column)->title);
  chart_title_set_name (chart, stead_log_answer_column (log, (guint) column)->title);
  chart_legend_set_position (chart, LXW_CHART_LEGEND_NONE);
  worksheet_insert_chart (writer->sheet, (lxw_row_t) (1 + 16 * place), (lxw_col_t) (log->columns->len + 1), chart);
}

static void
write_sheet (Writer               *writer,
             const SteadXlsxSheet *sheet)
{
  const SteadLogAnswer *log = sheet->log;
  g_autofree char *name = sheet_name (log->title);

  writer->sheet = workbook_add_worksheet (writer->book, name);
  set_widths (writer, log);
  write_head (writer, log);
  for (guint row = 0; row < log->rows->len; row++)
    for (guint column = 0; column < log->columns->len; column++)
      write_cell (writer, log, stead_log_answer_column (log, column), stead_log_answer_cell (log, row, column),
                  (lxw_row_t) row + 1, (lxw_col_t) column);
  write_sums (writer, log);
  for (int i = 0; i < 2 && log->rows->len > 0; i++)
    if (sheet->charts[i] > 0)
      add_chart (writer, log, name, sheet->charts[i], i);
}

static gboolean
write_book (const SteadXlsxSheet  *sheets,
            gsize                  n_sheets,
            const char            *title,
            const char            *author,
            const char            *path,
            GError               **error)
{
  lxw_workbook_options options = { .constant_memory = sheets[0].log->rows->len > MANY_ROWS,
                                   .tmpdir = (char *) g_get_tmp_dir () };
  Writer writer = { .book = workbook_new_opt (path, &options) };
  lxw_error failed;

  set_properties (&writer, sheets[0].log, title, author);
  make_formats (&writer, sheets[0].log->currency);
  for (gsize i = 0; i < n_sheets; i++)
    write_sheet (&writer, &sheets[i]);
  failed = workbook_close (writer.book);
  if (failed == LXW_NO_ERROR)
    return TRUE;
  g_set_error (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_WRITE,
               _("The workbook could not be made (%s). There may be no room for temporary files."),
               lxw_strerror (failed));
  return FALSE;
}

GBytes *
stead_xlsx_from_sheets (const SteadXlsxSheet  *sheets,
                        gsize                  n_sheets,
                        const char            *title,
                        const char            *author,
                        GError               **error)
{
  g_autofree char *path = NULL;
  g_autofree char *data = NULL;
  gboolean done;
  gsize length;
  int fd;

  g_return_val_if_fail (n_sheets > 0, NULL);
  for (gsize i = 0; i < n_sheets; i++)
    {
      g_return_val_if_fail (sheets[i].log->columns->len > 0 && sheets[i].log->columns->len <= 26, NULL);
      if (sheets[i].log->rows->len <= MAX_ROWS)
        continue;
      g_set_error_literal (error, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_WRITE,
                           _("The log has more rows than a workbook holds. Save it as CSV."));
      return NULL;
    }
  fd = g_file_open_tmp ("steading-XXXXXX.xlsx", &path, error);
  if (fd < 0)
    return NULL;
  close (fd);
  done = write_book (sheets, n_sheets, title, author, path, error) &&
         g_file_get_contents (path, &data, &length, error);
  g_unlink (path);
  return done ? g_bytes_new_take (g_steal_pointer (&data), length) : NULL;
}

GBytes *
stead_xlsx_from_log (const SteadLogAnswer  *log,
                     const char            *author,
                     GError               **error)
{
  const SteadXlsxSheet sheet = { .log = log };

  return stead_xlsx_from_sheets (&sheet, 1, log->title, author, error);
}
