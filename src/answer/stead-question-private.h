/* stead-question-private.h - questions whose figures are put together in files of their own. */
#pragma once

#include "answer/stead-question.h"

G_BEGIN_DECLS

/* One figure.  What does not exist is null: no text, a real that is not finite, a count
 * below 0, no day. */
void  stead_put_text  (JsonBuilder *out, const char *name, const char *text);
void  stead_put_plain (JsonBuilder *out, const char *name, const char *markup);
void  stead_put_int   (JsonBuilder *out, const char *name, gint64 value);
void  stead_put_count (JsonBuilder *out, const char *name, gint64 value);
void  stead_put_real  (JsonBuilder *out, const char *name, double value);
void  stead_put_day   (JsonBuilder *out, const char *name, SteadDay day);
/* An array with an object for each of @items, whose figures @put adds. */
typedef void (*SteadPutItem) (JsonBuilder *out, gconstpointer item);
void  stead_put_list  (JsonBuilder *out, const char *name, const GPtrArray *items, SteadPutItem put);

/* Each adds its figures to @out and returns its sentence, plain; %NULL with @error. */
char *stead_question_flock      (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_fish       (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_crop       (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_greenhouse (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_water      (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_batch      (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_stock      (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_store_room (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_trace      (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_recipe  (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_kitchen (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_checks  (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_sale    (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_season  (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* @id: a batch of which several products come. */
char *stead_question_joint   (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* @id: none. */
char *stead_question_how_sure (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_best_use (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_class   (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_hours   (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_results (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
char *stead_question_build   (SteadStore *store, gint64 id, JsonBuilder *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* @id: an account, or 0 for all; the lines of the school year. */
char *stead_question_ask_cash      (SteadStore   *store,
                                    gint64        id,
                                    JsonBuilder  *out,
                                    GError      **error) G_GNUC_WARN_UNUSED_RESULT;
/* @id: an enterprise, or 0 for the whole farm; the school year. */
char *stead_question_ask_statement (SteadStore   *store,
                                    gint64        id,
                                    JsonBuilder  *out,
                                    GError      **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
