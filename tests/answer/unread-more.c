/* unread-more.c - the rest of the questions of test-unread.c. */
#include "config.h"

#include "answer/stead-due-answer.h"
#include "answer/stead-recall-answer.h"
#include "answer/stead-reflect-answer.h"
#include "answer/stead-release-answer.h"
#include "answer/stead-sale-result-answer.h"
#include "answer/stead-skill-answer.h"
#include "answer/stead-trace-answer.h"

#include "demo.h"
#include "unread.h"

UNREAD_ASK (, trace, SteadTraceAnswer, stead_trace_answer_new (store, id, error))
UNREAD_ASK (, recall, SteadRecallAnswer, stead_recall_answer_new (store, id, 0, error))
UNREAD_ASK (, reflect, SteadReflectAnswer, stead_reflect_answer_new (store, id, DEMO_TODAY - 90, DEMO_TODAY, error))
UNREAD_ASK (, sale_result, SteadResultAnswer, stead_result_answer_new (store, id, error))
UNREAD_ASK (, release, SteadReleaseAnswer, stead_release_answer_new (store, error))
UNREAD_ASK (, skills, SteadSkillAnswer, stead_skill_answer_new (store, id, error))
UNREAD_ASK (, strip, SteadStripAnswer, stead_strip_answer_new (store, NULL, 0, error))
UNREAD_ASK (, strip_of, SteadStripAnswer, stead_strip_answer_new (store, NULL, id, error))
