/* stead-check-plan-private.h - the parts of the plan of checks in words. */
#pragma once

#include "answer/stead-check-plan-answer.h"

G_BEGIN_DECLS

/* Puts the plan into words, anew in the language of the moment. */
void  stead_check_plan_answer_say (SteadCheckPlanAnswer *self);

/* One row without its direction: "155 °F for 17 seconds", "70 °F within 2 hours", "pH 4.6". */
char *stead_check_row_text (const SteadLimit *row,
                            SteadUnitSystem   units) G_GNUC_WARN_UNUSED_RESULT;
/* "17 seconds", "3 minutes", "2 hours", "7 days". */
char *stead_check_span_text (double seconds) G_GNUC_WARN_UNUSED_RESULT;
/* A temperature on the strict side: "155 °F", or "68.4 °C (155 °F)"; @up: round the °C up. */
char *stead_check_temp_text (double          temp_f,
                             gboolean        up,
                             SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;

char *stead_check_line_text     (const SteadCheckLine *line, const SteadFarm *farm) G_GNUC_WARN_UNUSED_RESULT;
char *stead_check_own_text      (const SteadCheckLine *line, SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;
char *stead_check_reason_text   (const SteadCheckLine *line) G_GNUC_WARN_UNUSED_RESULT;
char *stead_check_sources_text  (const GPtrArray *rows) G_GNUC_WARN_UNUSED_RESULT;
char *stead_check_tool_text     (const SteadCheckLine *line) G_GNUC_WARN_UNUSED_RESULT;
char *stead_check_often_text    (const SteadCheckLine *line) G_GNUC_WARN_UNUSED_RESULT;
char *stead_check_who_text      (const SteadCheckLine *line) G_GNUC_WARN_UNUSED_RESULT;
char *stead_check_question_text (SteadCheckKey key) G_GNUC_WARN_UNUSED_RESULT;
char *stead_check_answer_text   (SteadCheckKey key, const char *word) G_GNUC_WARN_UNUSED_RESULT;
char *stead_check_stop_text     (const SteadCheckStop *stop, const SteadCheckFood *food,
                                 SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;
char *stead_check_way_text      (SteadCheckWay way) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
