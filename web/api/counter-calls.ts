/** The calls of a cook day under way: the plan in hand, what has happened, timers, closed batches; and what helps to choose a day. */
import type { NewBatch } from "#shared/contracts/batches.ts";
import type { NewChoice } from "#shared/contracts/choosing.ts";
import type { NewMark } from "#shared/contracts/counter.ts";
import type { NewDayPlan } from "#shared/contracts/day-plans.ts";
import type { NewTimer, Timer } from "#shared/contracts/timers.ts";
import { knowVersion, post, put, read, remove } from "./client.ts";

const of = (dayId: string): string => `/api/cook-days/${dayId}`;

export const counter = (dayId: string, signal?: AbortSignal) => read("Counter", `${of(dayId)}/counter`, signal);

export const putPlan = (dayId: string, id: string, body: NewDayPlan) => put("DayPlan", `${of(dayId)}/plans/${id}`, body);
export const removePlan = (dayId: string, id: string) => remove(`${of(dayId)}/plans/${id}`);
export const putMark = (dayId: string, id: string, body: NewMark) => put("Mark", `${of(dayId)}/marks/${id}`, body);
export const removeMark = (dayId: string, id: string) => remove(`${of(dayId)}/marks/${id}`);
export const putBatch = (dayId: string, id: string, body: NewBatch) => put("Batch", `${of(dayId)}/batches/${id}`, body);
export const removeBatch = (dayId: string, id: string) => remove(`${of(dayId)}/batches/${id}`);

export const putTimer = (dayId: string, id: string, body: NewTimer) => put("Timer", `${of(dayId)}/timers/${id}`, body);
/** Timers come within the counter's answer, each with its version. */
export const changeTimer = (dayId: string, { id, etag }: Pick<Timer, "id" | "etag">, body: NewTimer) => {
  knowVersion(`${of(dayId)}/timers/${id}`, etag);
  return putTimer(dayId, id, body);
};

export const chooseDay = (body: NewChoice, signal?: AbortSignal) => post("Choice", "/api/cook-days/choices", body, signal);
export const dayAdvice = (dayId: string, signal?: AbortSignal) => post("DayAdvice", `${of(dayId)}/advice`, {}, signal);
